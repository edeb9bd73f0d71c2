using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Reach;

/// <summary>The map of where a station is heard, or what it hears.</summary>
public static class ReachPicture
{
    /// <summary>Points of relief to ask for: two a pixel, so that the map stays sharp at twice the size.</summary>
    public const int ReliefSide = 1600;

    /// <summary>Rim around the radius to ask for, as a share of it.</summary>
    public const double RimShare = 0.05;

    /// <summary>Where the map lies on the sheet, in pixels at scale 1: for a world file.</summary>
    public static Box MapBox => MapSheet.MapBox;

    /// <summary>Draws the picture.</summary>
    /// <exception cref="ArgumentException">Relief and map are not of one zone.</exception>
    public static Drawing Draw(ReachPictureModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        model.Relief.RequireZoneOf(model.Map.Field.Frame);
        return new MapSheet
        {
            Title = Title(model),
            Radio = $"by {model.ReceiverName} · {model.RadioText}",
            Details = model.FitOutName,
            Method = model.MethodText,
            Theme = model.Theme,
        }.Draw(
            model.Relief,
            ReachImage.Draw(model.Map, model.Direction, model.Relief, model.Theme),
            MapMarks.Of(model.Map, model.StationName, model.Marks),
            ReachPanel.Draw(model));
    }

    private static string Title(ReachPictureModel model) => model.Direction switch
    {
        ReachDirection.Hears => $"What {model.StationName} hears",
        ReachDirection.Both => $"Where {model.StationName} is heard and hears",
        _ => $"Where {model.StationName} is heard",
    };
}

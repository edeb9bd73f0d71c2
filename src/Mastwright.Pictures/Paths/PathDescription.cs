using System.Text;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Paths;

/// <summary>The picture in sentences, for somebody who cannot see it.</summary>
internal static class PathDescription
{
    /// <summary>The sentences.</summary>
    public static string Of(PathPictureModel model, PathGeometry geometry)
    {
        StringBuilder text = new();
        text.Append($"{Wording.Distance(geometry.LengthMetres)} at {Wording.Frequency(model.FrequencyHz)}. ");
        text.Append($"Verdict: {VerdictMark.Sentence(model.Verdict, model.MarginDb, model.MarginLowDb, model.MarginHighDb)}. ");
        text.Append(model.Headline.Length > 0 ? model.Headline.TrimEnd('.') + ". " : "");
        text.Append($"Antenna at {model.TransmitterName}: {Wording.Antenna(model.TransmitterHeightMetres, geometry.LeftAntennaMetres)}. ");
        text.Append($"Antenna at {model.ReceiverName}: {Wording.Antenna(model.ReceiverHeightMetres, geometry.RightAntennaMetres)}. ");
        foreach (PathObstruction obstruction in geometry.HasRay ? model.Obstructions : [])
        {
            text.Append($"{Wording.Place(obstruction)}: {Wording.Clearance(obstruction)}. ");
        }

        foreach (PathStretch stretch in model.Missing)
        {
            text.Append($"No ground data from {Wording.Distance(stretch.FromMetres)} to {Wording.Distance(stretch.ToMetres)}. ");
        }

        foreach (PathDirection direction in model.Directions)
        {
            text.Append($"{Wording.Direction(direction)}. ");
        }

        foreach (string note in model.Notes)
        {
            text.Append(note.TrimEnd('.')).Append(". ");
        }

        return text.ToString().TrimEnd();
    }
}

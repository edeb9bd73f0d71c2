using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.BoxClimate;

namespace Mastwright.Tests.Station.BoxClimate;

/// <summary>A catalogue of boxes small enough to reckon with.</summary>
internal static class BoxRowsForTests
{
    internal static readonly StationCatalogue Catalogue = new([], [], [])
    {
        Box = new()
        {
            Materials = new([new("plastic", 3.5, 0.9, "test"), new("painted-steel", 5.5, 0.9, "test")], row => row.Key),
            Colours = new([new("white", 0.25, "test"), new("black", 0.95, "test")], row => row.Key),
            Seals = new([new("sealed", Estimate.Of(0.001, 0.01, 0.1), false, "test"), new("vented", Estimate.Of(1, 5, 20), true, "test")], row => row.Key),
            Places = new([new("rain", "outdoors in rain", Code("IP65"), 0.25, "test"), new("sea", "by the sea", Code("IP66"), 0.15, "test")], row => row.Key),
            Metals = new([new("stainless-steel", 0.5, "test"), new("aluminium", 0.9, "test"), new("zinc", 1.2, "test")], row => row.Key),
        },
    };

    internal static IngressCode Code(string text) => IngressCode.TryParse(text, out IngressCode? code) ? code! : throw new ArgumentException(text, nameof(text));
}

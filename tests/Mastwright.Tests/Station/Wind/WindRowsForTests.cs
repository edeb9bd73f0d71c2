using Mastwright.Station;
using Mastwright.Station.Mast;
using Mastwright.Station.Wind;

namespace Mastwright.Tests.Station.Wind;

/// <summary>Terrain categories of EN 1991-1-4, Table 4.1, exposures of ASCE/SEI 7-16, tubes and ice, as the catalogue has them.</summary>
internal static class WindRowsForTests
{
    internal static readonly TerrainRow Sea = new("0", "", 0.003, 1, "Table 4.1");
    internal static readonly TerrainRow Flat = new("I", "", 0.01, 1, "Table 4.1");
    internal static readonly TerrainRow Open = new("II", "", 0.05, 2, "Table 4.1");
    internal static readonly TerrainRow Village = new("III", "", 0.3, 5, "Table 4.1");
    internal static readonly TerrainRow Town = new("IV", "", 1, 10, "Table 4.1");
    internal static readonly ExposureRow ExposureC = new("C", "", 9.5, 274.32, "Table 26.11-1");
    internal static readonly IceRow Glaze20 = new("G2", 0.02, null, 900, "ISO 12494");
    internal static readonly IceRow Rime3 = new("R3", null, 1.6, 500, "ISO 12494");

    internal static readonly TubeGradeRow Steel = new("s235", "steel S235", TubeMaterial.Steel, 235e6, 210e9, 7850, 1, 1, "EN 10219-1");
    internal static readonly TubeGradeRow Aluminium = new("aw-6082-t6", "aluminium", TubeMaterial.Aluminium, 250e6, 70e9, 2700, 0.5, 1.1, "EN 755-2");

    internal static readonly StationCatalogue Catalogue = new([], [], [])
    {
        Structure = new()
        {
            Terrains = new([Sea, Flat, Open, Village, Town], row => row.Key),
            Exposures = new([ExposureC], row => row.Key),
            Ice = new([Glaze20, Rime3], row => row.Key),
            Tubes = new([new("steel-60.3x3.2", 0.0603, 0.0032, TubeMaterial.Steel, "EN 10219-2")], row => row.Key),
            Grades = new([Steel, Aluminium], row => row.Key),
        },
    };

    internal static readonly BasicWind Plain = new()
    {
        SpeedMetresPerSecond = 26,
        Averaging = WindAveraging.TenMinuteMean,
        ReturnPeriodYears = 50,
        Level = WindLevel.Characteristic,
        Form = WindForm.Eurocode,
        Terrain = "II",
    };
}

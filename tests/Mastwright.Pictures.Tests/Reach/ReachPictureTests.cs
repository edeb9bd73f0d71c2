using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;
using Mastwright.Pictures.Reach;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;

namespace Mastwright.Pictures.Tests.Reach;

public sealed class ReachPictureTests
{
    private const double Cell = 100;
    private const int Side = 60;

    [Fact]
    public void It_shows_station_rings_scale_north_legend_and_assumptions()
    {
        Drawing drawing = ReachPicture.Draw(Model());
        string[] texts = [.. drawing.Texts().Select(text => text.Text)];
        Assert.Contains("Where Ferry House is heard", texts);
        Assert.Contains("Ferry House", texts);
        Assert.Contains("1 km", texts);
        Assert.Contains("N", texts);
        Assert.Contains("30 dB and more", texts);
        Assert.Contains("below the limit", texts);
        Assert.Contains("What the path may lose", texts);
        Assert.Contains("The body takes 3 dB", texts);
        Assert.Contains("Creamery", texts);
        Assert.DoesNotContain("Far Away", texts);
        Assert.Empty(drawing.MissingGlyphs());
        Assert.Equal(ReachPicture.MapBox, drawing.Group("map")!.Members.OfType<ImageShape>().Single().Box);
    }

    [Fact]
    public void No_two_labels_of_the_map_overlap()
    {
        ReachPictureModel model = Model();
        UtmPosition at = UniversalTransverseMercator.FromGeo(model.Map.Field.Input.Station);
        ReachMark[] crowd = [.. Enumerable.Range(0, 30).Select(i => new ReachMark($"Place {i}", at.EastingMetres + (i * 21), at.NorthingMetres + (i % 5 * 40)))];
        Drawing drawing = ReachPicture.Draw(model with { Marks = [.. crowd] });
        TextShape[] labels = [.. ReachMapLabels(drawing)];
        Assert.True(labels.Length > 5);
        for (int i = 0; i < labels.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                Assert.False(BoxOf(labels[i]).Overlaps(BoxOf(labels[j])), $"{labels[i].Text} and {labels[j].Text}");
            }
        }
    }

    [Fact]
    public void Each_class_has_its_colour_and_what_is_below_the_limit_its_hatch()
    {
        ReachPictureModel model = Model();
        PixelImage image = ReachImage.Draw(model.Map, ReachDirection.Heard, model.Relief);
        // The margin falls from the middle to the west: 35, 25, 15, 5 dB and below; the ground is level.
        int row = image.Height / 2;
        foreach ((double metres, Ink ink) in new[] { (250.0, ReachScale.Light.Of(3)), (750, ReachScale.Light.Of(2)), (1_250, ReachScale.Light.Of(1)), (1_750, ReachScale.Light.Of(0)) })
        {
            Assert.Equal(ink, At(image, model, -metres, row));
        }

        HashSet<Ink> hatched = [.. Enumerable.Range(0, 40).Select(i => At(image, model, -2_250 - (i * 5), row))];
        Assert.Contains(ReachScale.Light.Land, hatched);
        Assert.True(hatched.Count > 1);
        Assert.All(hatched, ink => Assert.DoesNotContain(ink, Enumerable.Range(0, 4).Select(ReachScale.Light.Of)));
    }

    [Fact]
    public void Ground_that_is_missing_is_crossed_out_and_told()
    {
        ReachPictureModel model = Model(missing: true);
        Assert.Contains(ReachPicture.Draw(model).Texts(), text => text.Text == "no ground data on the way");
        Assert.DoesNotContain(ReachPicture.Draw(Model()).Texts(), text => text.Text == "no ground data on the way");
    }

    /// <summary>WCAG's relative luminance falls from class to class by at least a third, so the order shows without any colour.</summary>
    [Fact]
    public void The_scale_is_read_without_colour()
    {
        double[] luminance = [Luminance(ReachScale.Light.Land), .. Enumerable.Range(0, 4).Select(i => Luminance(ReachScale.Light.Of(i)))];
        double[] dark = [Luminance(ReachScale.Dark.Land), .. Enumerable.Range(0, 4).Select(i => Luminance(ReachScale.Dark.Of(i)))];
        for (int i = 1; i < luminance.Length; i++)
        {
            Assert.True(luminance[i] < luminance[i - 1] * 0.82, $"class {i}");
            Assert.True(dark[i] > dark[i - 1] / 0.82, $"class {i} on dark paper");
        }
    }

    [Fact]
    public void A_dark_picture_is_light_on_dark()
    {
        Drawing drawing = ReachPicture.Draw(Model() with { Theme = Theme.Dark });
        Assert.True(Luminance(drawing.Paper) < 0.02);
        Assert.All(drawing.Group("panel")!.Members.OfType<TextShape>(), text => Assert.True(Luminance(text.Ink) > 0.3, text.Text));
        Assert.Empty(drawing.MissingGlyphs());
    }

    /// <summary>The other map has 12 dB less everywhere: 0 to 12 dB here are gained, all that is coloured is better by 10 to 20 dB.</summary>
    [Fact]
    public void The_difference_of_two_maps_is_coloured_and_what_is_gained_is_marked()
    {
        ReachPictureModel model = Model();
        ReachBudget weaker = Budget() with { EndLosses = [new("body", "Body", 15, "test")] };
        ReachMap other = ReachMap.Of(model.Map.Field, weaker);
        Drawing drawing = DifferencePicture.Draw(model, other, "The old antenna");
        string[] texts = [.. drawing.Texts().Select(text => text.Text)];
        Assert.Contains("How much better Ferry House is heard", texts);
        Assert.Contains("+12.0 dB at the median place", texts);
        Assert.Contains(", compared with the old antenna", texts);
        Assert.Contains("How much worse Ferry House is heard", DifferencePicture.Draw(model with { Map = other }, model.Map, "The new antenna").Texts().Select(text => text.Text));
        Assert.Contains("gained: 0 dB and more only now", texts);
        Assert.Empty(drawing.MissingGlyphs());

        PixelImage image = DifferencePicture.Image(model, other);
        int row = image.Height / 2;
        Assert.Equal(ReachScale.Light.OfDifference(5), At(image, model, -250, row));
        HashSet<Ink> gained = [.. Enumerable.Range(0, 40).SelectMany(i => Enumerable.Range(0, 12).Select(j => At(image, model, -1_600 - (i * 5), row + j)))];
        Assert.Contains(ReachScale.Light.OfDifference(5), gained);
        Assert.True(gained.Count > 1);
        Assert.Contains(ReachScale.Light.Land, Enumerable.Range(0, 40).Select(i => At(image, model, -2_250 - (i * 5), row)));
    }

    [Fact]
    public void Several_stations_are_numbered_coloured_and_counted()
    {
        ReachPictureModel one = Model();
        BestServers servers = BestServers.Before(one.Map.Field.Frame, 2);
        servers.Take(1, one.Map);
        servers.Take(2, ReachMap.Of(one.Map.Field, Budget() with { EndLosses = [new("body", "Body", 15, "test")] }));
        UtmPosition at = UniversalTransverseMercator.FromGeo(one.Map.Field.Input.Station);
        ServerPictureModel model = new()
        {
            Servers = servers,
            Stations = [new("Ferry House", 1, at.EastingMetres, at.NorthingMetres), new("Creamery", 2, at.EastingMetres + 800, at.NorthingMetres + 800)],
            Relief = one.Relief,
            ReceiverName = "a hand-held at 1.5 m",
            RadioText = "868 MHz",
            MethodText = "By a rule made for the test.",
        };
        Drawing best = ServerPicture.Draw(model);
        Assert.Contains("Which of 2 stations is heard best", best.Texts().Select(text => text.Text));
        Assert.Contains("1  Ferry House", best.Texts().Select(text => text.Text));
        Assert.Contains("2", best.Group("map-marks")!.Members.OfType<TextShape>().Select(text => text.Text));
        Assert.Empty(best.MissingGlyphs());
        PixelImage image = ServerPicture.Image(model);
        Assert.Equal(ServerStyles.Colours[0], At(image, one, -250, image.Height / 2));

        // Both reach to where the margin of the first is 12 dB: 25 dB and 5 dB of it lie at 750 and 1750 m.
        Drawing count = ServerPicture.Draw(model with { ShowsCount = true, Theme = Theme.Dark });
        Assert.Contains("How many of 2 stations are heard", count.Texts().Select(text => text.Text));
        PixelImage counts = ServerPicture.Image(model with { ShowsCount = true });
        Assert.Equal(ReachScale.Light.Of(1), At(counts, one, -750, image.Height / 2));
        Assert.Equal(ReachScale.Light.Of(0), At(counts, one, -1_750, image.Height / 2));
    }

    [Fact]
    public void A_relief_of_another_zone_is_refused()
    {
        ReachPictureModel model = Model();
        GeoPoint elsewhere = new(46.4, -10);
        ReachField field = Field(elsewhere, missing: false);
        Assert.Throws<ArgumentException>(() => ReachPicture.Draw(model with { Relief = ReachRelief.Sample(GroundExtent.Of(Level(elsewhere)), field, 32, 0.05) }));
    }

    [Fact]
    public void The_overlay_is_clear_outside_the_map_and_shows_the_class_where_it_lies()
    {
        ReachPictureModel model = Model();
        ReachOverlay overlay = ReachOverlay.Draw(model.Map, ReachDirection.Heard);
        foreach ((double metres, Ink ink) in new[] { (250.0, ReachScale.Light.Of(3)), (750, ReachScale.Light.Of(2)), (1_250, ReachScale.Light.Of(1)), (1_750, ReachScale.Light.Of(0)) })
        {
            GeoPoint place = Geodesic.Direct(model.Map.Field.Input.Station, 268.3, metres);
            int column = (int)((place.LongitudeDegrees - overlay.WestDegrees) / (overlay.EastDegrees - overlay.WestDegrees) * overlay.Image.Width);
            int row = (int)((overlay.NorthDegrees - place.LatitudeDegrees) / (overlay.NorthDegrees - overlay.SouthDegrees) * overlay.Image.Height);
            ReadOnlySpan<byte> pixel = overlay.Image.Pixels.Slice(((row * overlay.Image.Width) + column) * 4, 4);
            Assert.Equal((ink.Red, ink.Green, ink.Blue), (pixel[0], pixel[1], pixel[2]));
            Assert.InRange(pixel[3], 100, 254);
        }

        ReachField disc = ReachField.FromCells(model.Map.Field.Input, model.Map.Field.Frame, [float.NaN, .. model.Map.Field.LossDb[1..]], [float.NaN, .. model.Map.Field.StationElevationDegrees[1..]], [ReachFlags.Outside, .. model.Map.Field.Flags[1..]], []);
        Assert.Equal(0, ReachOverlay.Draw(ReachMap.Of(disc, Budget()), ReachDirection.Heard).Image.Pixels[((40 * 1024) + 12) * 4 + 3]);
        Assert.Contains(overlay.Legend.Texts(), text => text.Text == "30 dB and more");
    }

    private static IEnumerable<TextShape> ReachMapLabels(Drawing drawing) => drawing.Group("map-marks")!.Members.OfType<TextShape>().Where(text => text.Halo is not null);

    private static Box BoxOf(TextShape text)
    {
        double width = TextRuler.WidthPixels(text.Text, text.SizePixels, text.Weight);
        double left = text.Anchor == TextAnchor.Middle ? text.At.X - (width / 2) : text.At.X;
        return new(left, text.At.Y - (text.SizePixels * 0.7), left + width, text.At.Y);
    }

    private static Ink At(PixelImage image, ReachPictureModel model, double eastMetres, int row)
    {
        int column = (int)((image.Width / 2.0) + (eastMetres / model.Relief.Frame.StepX));
        ReadOnlySpan<byte> pixel = image.Pixels.Slice(((row * image.Width) + column) * 4, 4);
        return new(pixel[0], pixel[1], pixel[2], pixel[3]);
    }

    private static double Luminance(Ink ink)
    {
        static double Linear(byte value) => value / 255.0 <= 0.03928 ? value / 255.0 / 12.92 : Math.Pow(((value / 255.0) + 0.055) / 1.055, 2.4);
        return (0.2126 * Linear(ink.Red)) + (0.7152 * Linear(ink.Green)) + (0.0722 * Linear(ink.Blue));
    }

    private static ReachPictureModel Model(bool missing = false)
    {
        GeoPoint station = new(46.4, -18.67);
        ReachField field = Field(station, missing);
        UtmPosition at = UniversalTransverseMercator.FromGeo(station);
        return new()
        {
            Map = ReachMap.Of(field, Budget()),
            Relief = ReachRelief.Sample(GroundExtent.Of(Level(station)), field, ReachPicture.ReliefSide / 4, ReachPicture.RimShare),
            StationName = "Ferry House",
            ReceiverName = "a hand-held at 1.5 m",
            RadioText = "868 MHz",
            MethodText = "By a rule made for the test.",
            Marks = [new("Creamery", at.EastingMetres + 1_000, at.NorthingMetres + 1_000), new("Far Away", at.EastingMetres + 9_000, at.NorthingMetres)],
            Assumptions = ["The body takes 3 dB"],
        };
    }

    private static ReachField Field(GeoPoint station, bool missing)
    {
        UtmPosition at = UniversalTransverseMercator.FromGeo(station);
        GridFrame frame = GridFrame.Utm(
            at.Zone, at.North, at.EastingMetres - ((Side - 1) / 2.0 * Cell), at.NorthingMetres + ((Side - 1) / 2.0 * Cell), Cell, Cell, Side, Side, samplesAreAreas: true);
        float[] loss = new float[Side * Side];
        float[] elevation = new float[loss.Length];
        ReachFlags[] flags = new ReachFlags[loss.Length];
        for (int i = 0; i < loss.Length; i++)
        {
            double west = Math.Abs((i % Side) - ((Side - 1) / 2.0)) * Cell;
            bool none = missing && i / Side < 4;
            loss[i] = none ? float.NaN : (float)(110 + (west / 50));
            elevation[i] = none ? float.NaN : 0;
            flags[i] = none ? ReachFlags.GroundMissing : ReachFlags.None;
        }

        ReachFieldInput input = new()
        {
            Station = station,
            RadiusMetres = Side * Cell / 2,
            CellMetres = Cell,
            StationHeightMetres = 10,
            ReceiverHeightMetres = 1.5,
            FrequencyHz = 868e6,
        };
        return ReachField.FromCells(input, frame, loss, elevation, flags, []);
    }

    private static GroundMosaic Level(GeoPoint station)
    {
        GridFrame frame = GridFrame.Geographic(Math.Floor(station.LongitudeDegrees), Math.Floor(station.LatitudeDegrees) + 1, 0.1, 0.1, 11, 11, samplesAreAreas: false);
        float[] heights = new float[11 * 11];
        Array.Fill(heights, 30);
        return GroundMosaic.Of([GroundWindow.FromHeights(frame, heights, "level")]);
    }

    private static ReachBudget Budget()
    {
        AntennaPattern pattern = AntennaPattern.Of(new() { GainDbi = Estimate.Exactly(5), Height = new(Estimate.Exactly(10), HeightAbove.Ground) }, 868e6, "antenna");
        return new()
        {
            Station = new() { Subject = "a", Name = "A", PowerIntoAntennaDbm = Estimate.Exactly(14), GainDbi = pattern.MainBeamDbi, RequiredDbm = Estimate.Exactly(-131) },
            StationPattern = pattern,
            Receiver = new() { Subject = "b", Name = "B", PowerIntoAntennaDbm = Estimate.Exactly(14), GainDbi = Estimate.Exactly(0), RequiredDbm = Estimate.Exactly(-134) },
            EndLosses = [new("body", "Body", 3, "test")],
            Wanted = new() { MarginDb = 10, ModelErrorDb = 8, ModelErrorSource = "test", LocationDb = 2, LocationSource = "test", FadingDb = 3, FadingSource = "test" },
        };
    }
}

using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.BoxClimate;

/// <summary>The judgements on warmth, cold and dew in a box whose numbers are known.</summary>
internal sealed class BoxClimateReview
{
    private readonly BoxInput _input;
    private readonly BoxModel _usual;
    private readonly BoxModel _hot;
    private readonly Estimate _outside;
    private readonly BoxExtreme _hottest;
    private readonly BoxExtreme _coldest;

    internal BoxClimateReview(BoxInput input, BoxModel model, Estimate heat, Estimate outside, List<Assumption> assumptions)
    {
        _input = input;
        _outside = outside;
        _usual = model;
        _hot = model with { OwnWatts = heat.High };
        if (!input.Year.IsEmpty)
        {
            Year = BoxYear.Of(model, input.Year.AsSpan());
            assumptions.AddRange(OfYear(input, model));
        }

        // A made year is good for how often dew falls, not for its hottest and coldest hour.
        ReadOnlySpan<BoxHour> measured = input.IsMadeYear ? [] : input.Year.AsSpan();
        _hottest = BoxExtreme.Hottest(_hot, outside.High, measured);
        _coldest = BoxExtreme.Coldest(model with { OwnWatts = 0 }, outside.Low, measured);
        double usual = outside.Median + model.Balance(outside.Median).InsideRiseKelvin(model.OwnWatts, 0);
        InsideCelsius = Estimate.Of(_coldest.InsideCelsius, Math.Clamp(usual, _coldest.InsideCelsius, _hottest.InsideCelsius), _hottest.InsideCelsius);
    }

    private static IEnumerable<Assumption> OfYear(BoxInput input, BoxModel model)
    {
        if (input.IsMadeYear)
        {
            yield return BoxDefaults.MadeYear(input.Path, input.Box.NightHumidity ?? BoxDefaults.NightHumidity);
        }
        else
        {
            yield return BoxDefaults.Wind(input.Path);
            if (model.OpenShare > 0 && input.Year.Any(hour => hour.Sky is null))
            {
                yield return BoxDefaults.Sky(input.Path);
            }
        }

        yield return BoxDefaults.Shut(input.Path);
    }

    /// <summary>Air in the box in °C: coldest with nothing on, on the whole, hottest.</summary>
    internal Estimate InsideCelsius { get; }

    /// <summary>The box through a year; null without one.</summary>
    internal BoxYear? Year { get; }

    internal IEnumerable<Ledger> Ledgers()
    {
        double sun = _hot.DesignSunWatts;
        BoxBalance hot = _hot.Balance(_outside.High);
        yield return Ledger.SummingTo(InsideCelsius.High, "air in the box in the hottest hour", "°C",
        [
            new("outside", "air outside", _outside.High, OutsideSource),
            new("heat", "heat of what is inside", hot.InsideRiseKelvin(_hot.OwnWatts, 0), Source, Film(hot, _hot.OwnWatts)),
            new("sun", "sun on the wall", hot.InsideRiseKelvin(0, sun), "ISO 6946:2017, annex C, from memory", FormattableString.Invariant(
                $"{sun:0.0} W taken up: {_hot.Absorptivity:0.00} of {BoxDefaults.SunWattsPerSquareMetre * _hot.OpenShare:0} W/m² on {_hot.Surface.LargestShadowSquareMetres:0.000} m²; {hot.WallShare * 100:0} % of it warms the inside")),
            .. Beyond(_hottest, "hotter"),
        ]);
        foreach (BoxPart part in _input.Box.Parts.Where(part => part.RatedCelsius is not null))
        {
            yield return new($"{part.Name} in the hottest hour", "°C",
            [
                new("inside", "air in the box", InsideCelsius.High, "the ledger of the hottest hour"),
                new("rise", "warmer than the air around it", part.RiseKelvin ?? 0, part.RiseKelvin is null ? "assumed" : part.PlanPath + "/rise"),
            ]);
        }

        BoxModel unlit = _usual with { OwnWatts = 0 };
        double lost = unlit.SkyWatts(_outside.Low);
        yield return Ledger.SummingTo(InsideCelsius.Low, "air in the box in the coldest night, with nothing on", "°C",
        [
            new("outside", "air outside", _outside.Low, OutsideSource),
            new("sky", "clear sky", unlit.Balance(_outside.Low).InsideRiseKelvin(0, -lost), "Swinbank 1963, from memory", FormattableString.Invariant($"{lost:0.0} W lost to the sky")),
            .. Beyond(_coldest, "colder"),
        ]);
        double sky = _usual.SkyWatts(_outside.Low);
        BoxBalance night = _usual.Balance(_outside.Low);
        yield return Ledger.SummingTo(_usual.NightCelsius(_outside.Low), "air in the box in the coldest night, while it works", "°C",
        [
            new("outside", "air outside", _outside.Low, OutsideSource),
            new("heat", "heat of what is inside", night.InsideRiseKelvin(_usual.OwnWatts, 0), Source, Film(night, _usual.OwnWatts)),
            new("sky", "clear sky", night.InsideRiseKelvin(0, -sky), "Swinbank 1963, from memory", FormattableString.Invariant($"{sky:0.0} W lost to the sky")),
        ]);
    }

    internal IEnumerable<Finding> Findings()
    {
        if (_input.Box.TemperatureCelsius is { } given && Differs(given) is { } differs)
        {
            yield return differs;
        }

        if (Narrow() is { } narrow)
        {
            yield return narrow;
        }

        ImmutableArray<BoxPart> rated = [.. _input.Box.Parts.Where(part => part.RatedCelsius is not null)];
        if (rated.IsEmpty)
        {
            yield return Finding.Unknown(
                "box-temperature", _input.Path, "temperature in the box", ("hot", Celsius(InsideCelsius.High)), ("cold", Celsius(InsideCelsius.Low)),
                ("outside-hot", Celsius(_hottest.OutsideCelsius)), ("changes", Changes(0))) with { Unit = "°C", Value = InsideCelsius };
        }

        foreach (BoxPart part in rated)
        {
            yield return Hot(part);
            yield return Cold(part);
        }

        if (_input.Box.Shade != BoxShade.None)
        {
            yield return DewNight();
        }

        if (Year is not null)
        {
            yield return DewOfYear(Year);
        }
        else
        {
            yield return Finding.Unknown("box-dew-year-unknown", _input.Path, "hours with dew or frost in the box", ("missing", _input.YearLacks)) with { Unit = "h" };
        }

        if (Pressure() is { } pressure)
        {
            yield return pressure;
        }
    }

    private string Source => "catalogue " + _usual.Material.Key + ": " + _usual.Material.Source;

    private string OutsideSource => _input.Box.OutsideCelsius is null ? _input.YearSource : _input.Path + "/outside";

    private string Of => _input.IsMadeYear ? _input.YearSource : "the year of " + _input.YearSource;

    /// <summary>What an hour of the year adds to the hour that is designed for; nothing where it stays within it.</summary>
    private IEnumerable<LedgerLine> Beyond(BoxExtreme extreme, string word)
    {
        if (extreme.IsOfYear)
        {
            yield return new(
                "year", $"{word} in the year of {_input.YearSource}", extreme.InsideCelsius - extreme.DesignCelsius, _input.YearSource,
                FormattableString.Invariant($"{extreme.InsideCelsius:0.0} °C with {extreme.OutsideCelsius:0.0} °C outside"));
        }
    }

    /// <summary>The plan's air outside against that of the year; null where it holds all of the year.</summary>
    private Finding? Narrow()
    {
        if (_input.IsMadeYear || _input.Year.IsEmpty || _input.Box.OutsideCelsius is not { } given)
        {
            return null;
        }

        double coldest = _input.Year.Min(hour => hour.OutsideCelsius);
        double hottest = _input.Year.Max(hour => hour.OutsideCelsius);
        double over = Math.Max(hottest - given.High, given.Low - coldest);
        return over <= 0 ? null : new()
        {
            Code = "box-outside-narrow",
            Subject = StationDefaults.Join(_input.Path, "outside"),
            Verdict = Verdict.Tight,
            Quantity = "air of the year outside what the plan gives",
            Unit = "K",
            Value = Estimate.Exactly(over),
            Limit = 0,
            Margin = -over,
            Source = _input.YearSource,
            Details = FindingDetails.Of(
                ("given", FormattableString.Invariant($"{given.Low:0.#} to {given.High:0.#} °C")), ("year", _input.YearSource),
                ("had", FormattableString.Invariant($"{coldest:0.#} to {hottest:0.#} °C"))),
        };
    }

    private string Film(BoxBalance balance, double watts) => FormattableString.Invariant(
        $"{watts:0.00} W over {balance.WallWattsPerKelvin:0.00} W/K; U = {_usual.Material.WattsPerSquareMetreKelvin:0.0} W/(m²·K) on {_usual.EffectiveSquareMetres:0.000} m² in still air");

    private Finding? Differs(Estimate given)
    {
        double over = Math.Max(InsideCelsius.High - given.High, given.Low - InsideCelsius.Low);
        return over <= BoxDefaults.TightKelvin ? null : new()
        {
            Code = "box-temperature-differs",
            Subject = StationDefaults.Join(_input.Path, "temperature"),
            Verdict = Verdict.Tight,
            Quantity = "temperature in the box",
            Unit = "°C",
            Value = InsideCelsius,
            Limit = given.High,
            Margin = given.High - InsideCelsius.High,
            Source = _input.Path + "/temperature",
            Details = FindingDetails.Of(
                ("given", FormattableString.Invariant($"{given.Low:0} to {given.High:0} °C")), ("made", FormattableString.Invariant($"{InsideCelsius.Low:0} to {InsideCelsius.High:0} °C"))),
        };
    }

    private Finding Hot(BoxPart part)
    {
        double limit = part.RatedCelsius!.Value.High;
        double celsius = InsideCelsius.High + (part.RiseKelvin ?? 0);
        string hours = _input.IsMadeYear || Year is null ? "" : FormattableString.Invariant($" In the year of {_input.YearSource} it is above that for {HoursAbove(limit - (part.RiseKelvin ?? 0))} hours.");
        return Held("box-part-hot", part, celsius, limit, limit - celsius) with
        {
            Details = FindingDetails.Of(
                ("name", part.Name), ("celsius", Celsius(celsius)), ("inside", Celsius(InsideCelsius.High)), ("outside", Celsius(_hottest.OutsideCelsius)), ("limit", Celsius(limit)),
                ("hours", hours), ("changes", Changes(part.RiseKelvin ?? 0))),
        };
    }

    private Finding Cold(BoxPart part)
    {
        double limit = part.RatedCelsius!.Value.Low;
        return Held("box-part-cold", part, InsideCelsius.Low, limit, InsideCelsius.Low - limit) with
        {
            Details = FindingDetails.Of(("name", part.Name), ("celsius", Celsius(InsideCelsius.Low)), ("outside", Celsius(_coldest.OutsideCelsius)), ("limit", Celsius(limit))),
        };
    }

    private static Finding Held(string code, BoxPart part, double celsius, double limit, double margin) => new()
    {
        Code = code,
        Subject = part.PlanPath,
        Verdict = margin < 0 ? Verdict.Fails : margin < BoxDefaults.TightKelvin ? Verdict.Tight : Verdict.Ok,
        Quantity = "temperature of a part",
        Unit = "°C",
        Value = Estimate.Exactly(celsius),
        Limit = limit,
        Margin = margin,
        Source = part.PlanPath + "/temperature",
    };

    /// <summary>Hours of the year in which the air inside is warmer than a temperature, with all that is inside at its highest.</summary>
    private int HoursAbove(double celsius)
    {
        int above = 0;
        foreach (BoxHour hour in _input.Year)
        {
            above += _hot.Of(hour).Inside > celsius ? 1 : 0;
        }

        return above;
    }

    /// <summary>What shade, a light colour and passing air would change in the hottest hour for something that is warmer than the box's air by a rise in kelvin.</summary>
    private string Changes(double riseKelvin)
    {
        List<string> changes = [];
        BoxCatalogue rows = _input.Catalogue.Box;
        Change(_hot.OpenShare > BoxDefaults.ShadedShare, "in the shade", _hot with { OpenShare = BoxDefaults.ShadedShare });
        if (rows.Colours.Rows.MinBy(row => row.Absorptivity) is { } lightest)
        {
            Change(lightest.Absorptivity < _hot.Absorptivity && _hot.OpenShare > 0, "in " + lightest.Key, _hot with { Absorptivity = lightest.Absorptivity });
        }

        if (rows.Seals.Rows.MaxBy(row => row.AirChangesPerHour.Median) is { } open)
        {
            Change(open.AirChangesPerHour.Median > _hot.AirChangesPerHour.Median, open.Key, _hot with { AirChangesPerHour = open.AirChangesPerHour });
        }

        return changes.Count == 0 ? "" : " It would be " + string.Join(", ", changes) + ".";

        void Change(bool applies, string words, BoxModel changed)
        {
            double celsius = BoxExtreme.Hottest(changed, _outside.High, _input.IsMadeYear ? [] : _input.Year.AsSpan()).InsideCelsius;
            if (applies && InsideCelsius.High - celsius >= 0.5)
            {
                changes.Add(FormattableString.Invariant($"{celsius + riseKelvin:0} °C {words}"));
            }
        }
    }

    private Finding DewNight()
    {
        double humidity = _input.Box.NightHumidity ?? BoxDefaults.NightHumidity;
        double dew = HumidAir.DewPointCelsius(_outside.Low, humidity);
        double roof = _usual.RoofCelsius(_outside.Low);
        double needed = _usual.WattsForRoof(_outside.Low, dew + 1);
        BoxModel hooded = _usual with { OpenShare = Math.Min(_usual.OpenShare, BoxDefaults.ShadedShare) };
        bool isDry = roof > dew;
        double underHood = hooded.RoofCelsius(_outside.Low);
        return new()
        {
            Code = "box-dew-night",
            Subject = _input.Path,
            Verdict = isDry ? Verdict.Ok : Verdict.Tight,
            Quantity = "roof of the box above the dew point",
            Unit = "K",
            Value = Estimate.Exactly(roof - dew),
            Limit = 0,
            Margin = roof - dew,
            Source = "WMO-No. 8, annex 4.B; common practice",
            Details = FindingDetails.Of(
                ("outside", Celsius(_outside.Low)), ("humidity", FormattableString.Invariant($"{humidity * 100:0} %")), ("roof", Fine(roof)), ("dew", Fine(dew)),
                ("says", isDry ? "none forms" : "dew or frost forms on its inside wherever the outside air has come in"),
                ("needed", FormattableString.Invariant($"{needed:0.0} W")), ("own", FormattableString.Invariant($"{_usual.OwnWatts:0.0} W")),
                ("hood", underHood - roof >= 0.1 ? $" Under a hood the roof would be at {Fine(underHood)}." : "")),
        };
    }

    private Finding DewOfYear(BoxYear year)
    {
        List<string> others = [];
        foreach (BoxSealRow row in _input.Catalogue.Box.Seals.Rows.Where(row => row.Key != _input.Box.Seal))
        {
            others.Add($"{row.Key} {Hours(BoxYear.Of(_usual with { AirChangesPerHour = row.AirChangesPerHour }, _input.Year.AsSpan()).DewHours)}");
        }

        if (_usual.OpenShare > BoxDefaults.ShadedShare)
        {
            others.Add($"under a hood {Hours(BoxYear.Of(_usual with { OpenShare = BoxDefaults.ShadedShare }, _input.Year.AsSpan()).DewHours)}");
        }

        others.Add($"with 2 W more heat {Hours(BoxYear.Of(_usual with { OwnWatts = _usual.OwnWatts + 2 }, _input.Year.AsSpan()).DewHours)}");
        Estimate changes = _usual.AirChangesPerHour;
        return new()
        {
            Code = "box-dew-year",
            Subject = _input.Path,
            Verdict = year.DewHours.High > 0 ? Verdict.Tight : Verdict.Ok,
            Quantity = "hours with dew or frost in the box",
            Unit = "h",
            Value = year.DewHours,
            Limit = 0,
            Margin = -year.DewHours.Median,
            Source = _input.YearSource,
            Details = FindingDetails.Of(
                ("year", Of), ("hours", Hours(year.DewHours)), ("all", FormattableString.Invariant($"{year.Hours}")), ("seal", _input.Box.Seal),
                ("changes", FormattableString.Invariant($"{changes.Low:0.###} to {changes.High:0.###}")), ("others", string.Join("; ", others))),
        };
    }

    private Finding? Pressure()
    {
        if (_input.Catalogue.Box.Seals.Find(_input.Box.Seal) is not { Breathes: false } || _input.Box.Code is null)
        {
            return null;
        }

        bool isUnderWater = _input.Box.Code.IsUnderWater;
        double limit = isUnderWater ? BoxDefaults.UnderWaterTestKilopascals : BoxDefaults.DustTestKilopascals;
        double suction = -SealedAir.OverpressureKilopascals(BoxDefaults.ShutCelsius, Math.Min(InsideCelsius.Low, BoxDefaults.ShutCelsius));
        double push = SealedAir.OverpressureKilopascals(BoxDefaults.ShutCelsius, Math.Max(InsideCelsius.High, BoxDefaults.ShutCelsius));
        return new()
        {
            Code = "box-pressure",
            Subject = StationDefaults.Join(_input.Path, "seal"),
            Verdict = suction > limit ? Verdict.Tight : Verdict.Ok,
            Quantity = "suction in a shut box",
            Unit = "kPa",
            Value = Estimate.Exactly(suction),
            Limit = limit,
            Margin = limit - suction,
            Source = isUnderWater ? "IEC 60529, 1 m under water" : "IEC 60529, clause 13.4, category 1, from memory",
            Details = FindingDetails.Of(
                ("shut", Celsius(BoxDefaults.ShutCelsius)), ("suction", Kilopascals(suction)), ("cold", Celsius(InsideCelsius.Low)), ("push", Kilopascals(push)), ("hot", Celsius(InsideCelsius.High)),
                ("force", FormattableString.Invariant($"{1000 * push * _usual.Surface.WidthMetres * _usual.Surface.HeightMetres:0} N")),
                ("test", isUnderWater ? "the test 1 m under water" : "the dust test"), ("limit", Kilopascals(limit))),
        };
    }

    private static string Celsius(double celsius) => FormattableString.Invariant($"{Math.Round(celsius) + 0.0:0} °C");

    private static string Fine(double celsius) => FormattableString.Invariant($"{Math.Round(celsius, 1) + 0.0:0.0} °C");

    private static string Kilopascals(double pressure) => FormattableString.Invariant($"{pressure:0.0} kPa");

    private static string Hours(Estimate hours) => hours.IsExact
        ? FormattableString.Invariant($"{hours.Median:0} h") : FormattableString.Invariant($"{hours.Low:0} to {hours.High:0} h");
}

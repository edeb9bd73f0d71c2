using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Station.Exposure;
using Mastwright.Station.Rules;
using Mastwright.Storage.Plans;

namespace Mastwright.Storage.Catalogue;

/// <summary>Binds the rows of law: regions, radio rules, conditions of approval, limits of exposure.</summary>
internal sealed partial class CatalogueReader
{
    private static string[] LawSections => ["radio-regions", "missing-regions", "radio-rules", "approval-conditions", "exposure-limits"];
    private static readonly string[] SourceKeys = ["document", "edition", "clause", "read", "how", "from-memory"];
    private static readonly string[] RegionKeys = ["key", "name", "covers", "law", "exposure", "note", "rows", "unread", "assumes", "adjacent-rows"];
    private static readonly string[] MissingKeys = ["key", "name", "reason"];
    private static readonly string[] ApprovalKeys = ["key", "region", "subject", "text", .. SourceKeys];

    private static readonly string[] RuleKeys =
    [
        "key", "region", "name", "from-mhz", "to-mhz", "access", "erp-mw", "eirp-mw", "conducted-mw", "gain-free-dbi", "density-dbm", "density-khz",
        "least-occupied-khz", "most-occupied-khz", "least-six-decibel-khz", "duty-cycle-percent", "polite-access", "least-channels", "least-spacing-khz",
        "dwell-s", "dwell-period-s", "asks", "kept-for", .. SourceKeys,
    ];

    private static readonly string[] LimitRowKeys =
        ["key", "region", "for", "over", "from-mhz", "to-mhz", "watts-per-square-metre", "volts-per-metre", "frequency-power", "averaging-minutes", "averages-pauses", "standing", .. SourceKeys];

    private RuleBook Law(PlanNode root) => new()
    {
        Regions = [.. Rows(root, "radio-regions", Region)],
        Missing = [.. Rows(root, "missing-regions", NotRead)],
        Rules = [.. Rows(root, "radio-rules", Rule)],
        Approvals = [.. Rows(root, "approval-conditions", Approval)],
        ExposureLimits = [.. Rows(root, "exposure-limits", Limit)],
    };

    private RadioRegion? Region(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, RegionKeys);
        string? name = Text(row, place, "name", required: true);
        string? law = Text(row, place, "law", required: true);
        ImmutableArray<string> covers = [];
        if (row.Find("covers") is { } list)
        {
            if (list.Kind == PlanNodeKind.Sequence)
            {
                covers = [.. list.Items.Where(item => item is { Kind: PlanNodeKind.Scalar, Text.Length: > 0 }).Select(item => item.Text)];
            }

            if (covers.Length == 0 || covers.Length != list.Items.Count)
            {
                Fault(list, place + "/covers", "must be a list of country codes");
            }
        }

        return name is null || law is null
            ? null
            : new(key, name, covers, law, Text(row, place, "exposure", required: false) ?? key, Text(row, place, "note", required: false) ?? "")
            {
                Rows = Text(row, place, "rows", required: false) ?? key,
                Unread = Text(row, place, "unread", required: false) ?? "",
                Assumes = Text(row, place, "assumes", required: false) ?? "",
                Adjacent = Text(row, place, "adjacent-rows", required: false) ?? "",
            };
    }

    private MissingRegion? NotRead(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, MissingKeys);
        return Text(row, place, "name", required: true) is { } name && Text(row, place, "reason", required: true) is { } reason ? new(key, name, reason) : null;
    }

    private ApprovalCondition? Approval(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, ApprovalKeys);
        string? region = Text(row, place, "region", required: true);
        int subject = Word(row, place, "subject", required: true, "antenna", "amplifier");
        string? text = Text(row, place, "text", required: true);
        RuleSource? source = Source(row, place);
        return region is null || text is null || source is null || subject < 0
            ? null
            : new(key, region, subject == 0 ? ApprovalSubject.Antenna : ApprovalSubject.Amplifier, text, source);
    }

    private RadioRule? Rule(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, RuleKeys);
        string? region = Text(row, place, "region", required: true);
        string? name = Text(row, place, "name", required: true);
        (double Low, double High)? band = Band(row, place);
        int access = Word(row, place, "access", required: false, "any", "hopping", "digital", "hybrid", "refused");
        int polite = Word(row, place, "polite-access", required: false, "no", "instead", "required");
        (double? power, PowerReference reference) = Power(row, place);
        double? density = Number(row, place, "density-dbm", -100, 60, required: false);
        double? densityWidth = Number(row, place, "density-khz", 0.001, 100_000, required: density is not null);
        string keptFor = Text(row, place, "kept-for", required: access == 4) ?? "";
        RuleSource? source = Source(row, place);
        RadioRule bound = new()
        {
            Key = key,
            Region = region ?? "",
            Name = name ?? "",
            LowHz = band?.Low ?? 0,
            HighHz = band?.High ?? 0,
            Access = access switch { 1 => RuleAccess.Hopping, 2 => RuleAccess.Digital, 3 => RuleAccess.Hybrid, 4 => RuleAccess.Refused, _ => RuleAccess.Any },
            PowerDbm = power,
            Reference = reference,
            GainFreeDbi = Number(row, place, "gain-free-dbi", -20, 60, required: false),
            DensityDbm = density,
            DensityBandwidthHz = densityWidth * 1e3,
            LeastOccupiedHz = Number(row, place, "least-occupied-khz", 0.001, 100_000, required: false) * 1e3,
            MostOccupiedHz = Number(row, place, "most-occupied-khz", 0.001, 100_000, required: false) * 1e3,
            LeastSixDecibelHz = Number(row, place, "least-six-decibel-khz", 0.001, 100_000, required: false) * 1e3,
            DutyCyclePercent = Number(row, place, "duty-cycle-percent", 0.0001, 100, required: false),
            PoliteAllowed = polite == 1,
            PoliteRequired = polite == 2,
            LeastChannels = (int?)Number(row, place, "least-channels", 2, 10_000, required: false),
            LeastSpacingHz = Number(row, place, "least-spacing-khz", 0.001, 100_000, required: false) * 1e3,
            MostDwellSeconds = Number(row, place, "dwell-s", 0.0001, 3600, required: false),
            DwellPeriodSeconds = Number(row, place, "dwell-period-s", 0.0001, 86_400, required: false),
            Asks = Text(row, place, "asks", required: false) ?? "",
            KeptFor = keptFor,
            Source = source ?? new("", "", "", ""),
        };
        return region is null || name is null || band is null || source is null || access == -2 || polite == -2 ? null : bound;
    }

    private (double? Dbm, PowerReference Reference) Power(PlanNode row, string place)
    {
        (string Key, PowerReference Reference)[] ways = [("erp-mw", PowerReference.Erp), ("eirp-mw", PowerReference.Eirp), ("conducted-mw", PowerReference.Conducted)];
        (string Key, PowerReference Reference)[] given = [.. ways.Where(way => row.Find(way.Key) is not null)];
        if (given.Length > 1)
        {
            Fault(row, place, "give the power once: erp-mw, eirp-mw or conducted-mw");
        }

        return given.Length == 0
            ? (null, PowerReference.Conducted)
            : (Number(row, place, given[0].Key, 1e-6, 1e7, required: true) is { } milliwatts ? 10 * Math.Log10(milliwatts) : null, given[0].Reference);
    }

    private ExposureLimit? Limit(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, LimitRowKeys);
        string? region = Text(row, place, "region", required: true);
        int who = Word(row, place, "for", required: true, "public", "workers");
        string? over = Text(row, place, "over", required: true);
        (double Low, double High)? band = Band(row, place);
        bool field = row.Find("volts-per-metre") is not null;
        if (field == (row.Find("watts-per-square-metre") is not null))
        {
            Fault(row, place, "give the limit once: watts-per-square-metre or volts-per-metre, at 1 MHz by its formula");
            return null;
        }

        double? coefficient = Number(row, place, field ? "volts-per-metre" : "watts-per-square-metre", 1e-9, 1e9, required: true);
        double? exponent = Number(row, place, "frequency-power", -4, 4, required: true);
        double? averaging = Number(row, place, "averaging-minutes", 0.01, 60, required: true);
        int pauses = Word(row, place, "averages-pauses", required: false, "no", "yes");
        int standing = Word(row, place, "standing", required: false, "law", "minimum", "recommendation");
        RuleSource? source = Source(row, place);
        return region is null || who < 0 || over is null || band is not { } range || coefficient is not { } one || exponent is not { } power || averaging is not { } minutes || standing == -2 || source is null
            ? null
            : new()
            {
                Key = key,
                Region = region,
                For = who == 0 ? Exposed.Public : Exposed.Workers,
                Over = over,
                LowHz = range.Low,
                HighHz = range.High,
                Coefficient = one,
                Exponent = power,
                IsField = field,
                AveragingSeconds = minutes * 60,
                AveragesPauses = pauses == 1,
                Standing = standing switch { 1 => LimitStanding.Minimum, 2 => LimitStanding.Recommendation, _ => LimitStanding.Law },
                Source = source,
            };
    }

    private (double Low, double High)? Band(PlanNode row, string place)
    {
        double? low = Number(row, place, "from-mhz", 0.001, 300_000, required: true);
        double? high = Number(row, place, "to-mhz", 0.001, 300_000, required: true);
        if (low >= high)
        {
            Fault(row.Find("to-mhz")!, place + "/to-mhz", "must be above from-mhz");
            return null;
        }

        return low is { } from && high is { } to ? (from * 1e6, to * 1e6) : null;
    }

    /// <summary>Where a row comes from: the day on which its text was read, or the word that nobody held it.</summary>
    private RuleSource? Source(PlanNode row, string place)
    {
        string? document = Text(row, place, "document", required: true);
        string? edition = Text(row, place, "edition", required: true);
        string? clause = Text(row, place, "clause", required: true);
        bool memory = Word(row, place, "from-memory", required: false, "no", "yes") == 1;
        string? read = Text(row, place, "read", required: !memory);
        if (read is not null && !DateOnly.TryParseExact(read, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _))
        {
            Fault(row.Find("read")!, place + "/read", "must be the day on which the text was read, such as 2026-11-28");
        }
        else if (read is not null && memory)
        {
            Fault(row.Find("read")!, place + "/read", "a row from memory was read on no day; leave out one of the two");
        }

        return document is null || edition is null || clause is null
            ? null
            : new(document, edition, clause, read ?? "", Text(row, place, "how", required: false) ?? "", memory);
    }

    /// <summary>The place of a word among a few; -1 when the key is absent, -2 when the word is none of them.</summary>
    private int Word(PlanNode row, string place, string key, bool required, params ReadOnlySpan<string> words)
    {
        if (Text(row, place, key, required) is not { } text)
        {
            return -1;
        }

        int index = words.IndexOf(text);
        if (index < 0)
        {
            Fault(row.Find(key)!, place + "/" + key, $"'{PlanProblemList.Clip(text)}' is none of {string.Join(", ", words.ToArray())}");
            return -2;
        }

        return index;
    }
}

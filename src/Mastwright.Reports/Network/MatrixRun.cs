using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Links;
using Mastwright.Plans;
using Mastwright.Reports.Sessions;
using Mastwright.Storage.Jobs;

namespace Mastwright.Reports.Network;

/// <summary>Works out the links between all stations of a plan over one ground, and keeps the paths for the next time.</summary>
internal sealed class MatrixRun
{
    /// <summary>Side in degrees of the area up to which the ground of all stations is joined once; beyond it each path has its own.</summary>
    private const double MostDegrees = 2;

    private readonly Assessment assessment;
    private readonly ResultStore? store;
    private readonly string key;

    /// <summary>Prepares.</summary>
    /// <param name="session">The plan with its ground.</param>
    /// <param name="cacheFolder">Where paths are kept; null for nowhere.</param>
    internal MatrixRun(PlanSession session, string? cacheFolder)
    {
        GeoBounds? area = PlanArea.Of(session.Plan);
        if (area is { } bounds && bounds.WidthDegrees <= MostDegrees && bounds.NorthDegrees - bounds.SouthDegrees <= MostDegrees)
        {
            Lazy<GroundMosaic> ground = new(() => session.Ground.MosaicFor(bounds));
            assessment = session.Over((_, _) => ground.Value);
        }
        else
        {
            assessment = session.Assessment;
        }

        store = cacheFolder is null ? null : new(cacheFolder, new());
        key = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"path-facts\n{Path.GetFullPath(session.Document.Folder)}\n{session.Plan.Name}")));
        Memory = PathMemory.FromBytes(Read());
    }

    /// <summary>The paths that are known.</summary>
    internal PathMemory Memory { get; }

    /// <summary>The links between stations at one time percentage after another, kept for the next time; null, after telling, when the ground turns out to be damaged.</summary>
    /// <param name="session">The plan with its ground.</param>
    /// <param name="stations">The stations.</param>
    /// <param name="cacheFolder">Where paths are kept; null for nowhere.</param>
    /// <param name="timePercents">The time percentages; null for the plan's own.</param>
    /// <param name="progress">Told the pairs that are done; null for nobody.</param>
    /// <param name="tell">Told of damage.</param>
    /// <param name="note">Told where paths could not be kept.</param>
    /// <param name="cancellation">Stops it.</param>
    internal static ImmutableArray<MatrixReport>? All(
        PlanSession session,
        ImmutableArray<LinkStation> stations,
        string? cacheFolder,
        IEnumerable<double?> timePercents,
        IProgress<int>? progress,
        Action<string> tell,
        Action<string> note,
        CancellationToken cancellation)
    {
        MatrixRun run = new(session, cacheFolder);
        ImmutableArray<MatrixReport> reports = [.. timePercents.Select(percent => run.Run(stations, percent, progress, cancellation))];
        if (session.TellDamage(tell))
        {
            return null;
        }

        run.Keep(note);
        return reports;
    }

    /// <summary>Works out the matrix.</summary>
    /// <inheritdoc cref="Assessment.Matrix"/>
    internal MatrixReport Run(ImmutableArray<LinkStation> stations, double? timePercent, IProgress<int>? progress, CancellationToken cancellation) =>
        assessment.Matrix(stations, Memory, timePercent, progress, cancellation);

    /// <summary>Keeps what is new; a folder that cannot be written is told and costs only the next run its head start.</summary>
    internal void Keep(Action<string> tell)
    {
        if (store is null || Memory.Added == 0)
        {
            return;
        }

        try
        {
            store.Keep(key, Memory.ToBytes());
            store.Tidy();
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            tell($"{store.Folder}: paths cannot be kept for the next time: {fault.Message}");
        }
    }

    private byte[]? Read()
    {
        try
        {
            return store?.Read(key);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}

using System.Net;

namespace Mastwright.Workbench.Hosting;

/// <summary>What the pages are served with.</summary>
public sealed record WorkbenchOptions
{
    /// <summary>The port that is used when none is asked for.</summary>
    public const int UsualPort = 7473;

    /// <summary>The plan file.</summary>
    public required string PlanPath { get; init; }

    /// <summary>Port to listen on; 0 for any free one.</summary>
    public int Port { get; init; } = UsualPort;

    /// <summary>Address to listen on; loopback by default. Any other asks for an access key.</summary>
    public IPAddress Address { get; init; } = IPAddress.Loopback;

    /// <summary>Names, besides its address, that a browser may call this server by.</summary>
    public IReadOnlyList<string> HostNames { get; init; } = [];

    /// <summary>Whether the plan may name files outside its folder.</summary>
    public bool AllowOutside { get; init; }

    /// <summary>Address of background tiles, with {z}, {x} and {y}; null for none.</summary>
    public string? BackgroundTiles { get; init; }

    /// <summary>Certificate in PEM or PKCS #12 form; null for one made here.</summary>
    public string? CertificatePath { get; init; }

    /// <summary>Key of a PEM certificate, where it stands in a file of its own.</summary>
    public string? CertificateKeyPath { get; init; }

    /// <summary>Serve without TLS.</summary>
    public bool WithoutTls { get; init; }

    /// <summary>Let an access key travel in clear.</summary>
    public bool InsistOnKeyInClear { get; init; }

    /// <summary>Make a new access key; the old one opens nothing any more.</summary>
    public bool NewKey { get; init; }

    /// <summary>Folder that the access key's hash, the made certificate and the keys of cookies are kept in; null for the user's own.</summary>
    public string? KeptFolder { get; init; }

    /// <summary>The store of records: its file, or "Host=…" for a database; null for <c>records.sqlite</c> beside the plan.</summary>
    public string? RecordsPlace { get; init; }

    /// <summary>Whether only this machine can reach the server.</summary>
    public bool IsLoopback => IPAddress.IsLoopback(Address);

    /// <summary>Whether the server speaks TLS.</summary>
    public bool UsesTls => !IsLoopback && !WithoutTls;
}

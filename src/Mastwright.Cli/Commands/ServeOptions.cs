using System.CommandLine;
using System.Net;

namespace Mastwright.Cli.Commands;

/// <summary>The options of serving, which 'serve' and 'demo --serve' share.</summary>
internal sealed class ServeOptions
{
    private const int LargestPort = 65_535;

    private readonly Option<int?> port = Options.Whole("--port", "Port to listen on (default 7473; 0: any free one).");
    private readonly Option<string?> listen = new("--listen") { HelpName = "ADDRESS", Description = "Address of this machine to listen on for others, who then need the access key; 0.0.0.0 for all (default: this machine alone)." };
    private readonly Option<string[]> name = new("--host-name") { HelpName = "NAME", Description = "Another name that browsers call this machine by; may be given several times." };
    private readonly Option<string?> certificate = new("--certificate") { HelpName = "FILE", Description = "Certificate to show, PEM or PKCS #12 (default: one made here and kept)." };
    private readonly Option<string?> certificateKey = new("--certificate-key") { HelpName = "FILE", Description = "Key of a PEM certificate, where it stands in a file of its own." };
    private readonly Option<bool> newKey = new("--new-key") { Description = "Make a new access key and show it once; the old one opens nothing any more." };
    private readonly Option<bool> withoutTls = new("--no-tls") { Description = "Serve others without encryption; refused unless you insist." };
    private readonly Option<bool> insist = new("--insist-on-key-in-clear") { Description = "Let the access key travel unencrypted: only where something else encrypts the way." };
    private readonly Option<string?> background = new("--background-tiles") { HelpName = "URL", Description = "Map pictures to lay under the ground, as https://…/{z}/{x}/{y}.png; the browser fetches them from there." };

    private readonly Option<string?> store = new("--store") { HelpName = "STORE", Description = "The store of records: its file, or 'Host=…' for a database (default: records.sqlite beside the plan)." };

    private Option[] All => [store, port, listen, name, certificate, certificateKey, newKey, withoutTls, insist, background];

    public void AddTo(Command command)
    {
        foreach (Option option in All)
        {
            command.Options.Add(option);
        }
    }

    /// <summary>The first of them that was given; null when there is none.</summary>
    public string? Given(ParseResult parsed) => All.FirstOrDefault(option => parsed.GetResult(option) is { Implicit: false })?.Name;

    /// <summary>What is wrong with the options; null when nothing is.</summary>
    public string? Problem(ParseResult parsed)
    {
        if (parsed.GetValue(port) is { } number and not (>= 0 and <= LargestPort))
        {
            return $"--port: '{number}' is no port; write 1 to {LargestPort}, or 0 for any free one";
        }

        if (parsed.GetValue(listen) is { } address && !IPAddress.TryParse(address, out _))
        {
            return $"--listen: '{address}' is no address; write one of this machine, such as 192.168.1.20, or 0.0.0.0 for all";
        }

        if (parsed.GetValue(certificateKey) is not null && parsed.GetValue(certificate) is null)
        {
            return "--certificate-key belongs to --certificate FILE";
        }

        if (parsed.GetValue(background) is not { } tiles)
        {
            return null;
        }

        bool isUrl = Uri.TryCreate(tiles, UriKind.Absolute, out Uri? uri) && uri.Scheme is "https" or "http" && uri.Host.All(letter => char.IsAsciiLetterOrDigit(letter) || letter is '.' or '-');
        return isUrl && tiles.Contains("{z}", StringComparison.Ordinal) && tiles.Contains("{x}", StringComparison.Ordinal) && tiles.Contains("{y}", StringComparison.Ordinal)
            ? null
            : $"--background-tiles: '{tiles}' is no address of tiles; write https://HOST/…/{{z}}/{{x}}/{{y}}.png";
    }

    /// <summary>What was asked for.</summary>
    public ServeQuestion Of(ParseResult parsed, string planPath, bool allowOutside) => new(planPath, allowOutside)
    {
        Port = parsed.GetValue(port),
        Address = parsed.GetValue(listen) is { } address ? IPAddress.Parse(address) : IPAddress.Loopback,
        HostNames = parsed.GetValue(name) ?? [],
        BackgroundTiles = parsed.GetValue(background),
        RecordsPlace = parsed.GetValue(store),
        CertificatePath = parsed.GetValue(certificate),
        CertificateKeyPath = parsed.GetValue(certificateKey),
        WithoutTls = parsed.GetValue(withoutTls),
        InsistOnKeyInClear = parsed.GetValue(insist),
        NewKey = parsed.GetValue(newKey),
    };
}

using System.Text.RegularExpressions;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Ledgers;
using Mastwright.Pictures.Paths;
using Mastwright.Pictures.Tests.Ledgers;
using Mastwright.Pictures.Tests.Paths;
using Mastwright.Pictures.Writers;
using Snapshooter.Xunit3;

namespace Mastwright.Pictures.Tests.Writers;

/// <summary>Pictures that somebody has looked at and found good. They change by a reviewed commit only.</summary>
public sealed partial class ApprovedPictureTests
{
    [Fact]
    public void The_wood_in_the_zone_looks_as_approved() =>
        Snapshot.Match(Picture(PathPicture.Draw(SkerrinPaths.Woodland, PictureSize.Small, Theme.Light)));

    [Fact]
    public void The_steps_of_a_ledger_look_as_approved() =>
        Snapshot.Match(Picture(LedgerPicture.Draw(LedgerPictureTests.Link, 900, Theme.Light)));

    /// <summary>The file without its embedded letters: those are tested against another library, and nobody reviews base 64.</summary>
    private static string Picture(Drawing drawing) => Letters().Replace(SvgWriter.Write(drawing), "base64,…");

    [GeneratedRegex("base64,[A-Za-z0-9+/=]+", RegexOptions.None, matchTimeoutMilliseconds: 10_000)]
    private static partial Regex Letters();
}

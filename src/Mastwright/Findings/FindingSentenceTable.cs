namespace Mastwright.Findings;

/// <summary>Text and advice for each finding code; names in braces are filled from the finding's details.</summary>
internal static class FindingSentenceTable
{
    internal static readonly (string Code, string Text, string Advice)[] Entries =
    [
        ("link-margin", "{from} is heard at {to} with {margin} to spare.", "{advice}"),
    ];
}

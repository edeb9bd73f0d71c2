using System.CommandLine;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Storage.Files;

namespace Mastwright.Cli;

/// <summary>Options and arguments that several commands share.</summary>
internal static class Options
{
    internal static Argument<string> Plan() => new("PLAN") { Description = "The plan file." };

    internal static Option<bool> Json() => new("--json") { Description = "Write one JSON document instead of text." };

    internal static Option<bool> AllowOutside() => new("--allow-outside")
    {
        Description = "Let the plan name files outside its own folder.",
    };

    internal static Option<string[]> FailOn()
    {
        Option<string[]> option = new("--fail-on")
        {
            Description = "Also exit with 1 on findings that are 'tight' or 'unknown'; may be given twice.",
        };
        option.AcceptOnlyFromAmong("tight", "unknown");
        return option;
    }

    /// <summary>An option whose text is a quantity with its unit.</summary>
    internal static Option<Estimate?> Quantity(string name, Dimension dimension, string description) => new(name)
    {
        Description = description,
        HelpName = dimension == Dimension.Ratio ? "DECIBELS" : dimension.ToString().ToUpperInvariant(),
        CustomParser = result =>
        {
            string text = string.Join(' ', result.Tokens.Select(token => token.Value));
            if (Quantities.Quantity.TryParse(text, dimension, out Estimate value, out string problem))
            {
                return value;
            }

            result.AddError($"{name}: {problem}");
            return null;
        },
    };

    /// <summary>An option whose text is a whole number.</summary>
    internal static Option<int?> Whole(string name, string description) => new(name)
    {
        Description = description,
        HelpName = "NUMBER",
        CustomParser = result =>
        {
            if (int.TryParse(result.Tokens[0].Value, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int value))
            {
                return value;
            }

            result.AddError($"{name}: '{result.Tokens[0].Value}' is not a whole number");
            return null;
        },
    };

    /// <summary>An option whose text is a number without a unit.</summary>
    internal static Option<double?> Plain(string name, string description) => new(name)
    {
        Description = description,
        HelpName = "NUMBER",
        CustomParser = result =>
        {
            if (double.TryParse(result.Tokens[0].Value, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value))
            {
                return value;
            }

            result.AddError($"{name}: '{result.Tokens[0].Value}' is not a number; write one without a unit, such as 45");
            return null;
        },
    };

    /// <summary>Writes a text file, whole or not at all. False, and told on the error output, when it cannot be written.</summary>
    internal static bool Write(string path, string text)
    {
        try
        {
            WholeFile.Write(path, text);
            return true;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            Console.Error.WriteLine($"{path}: cannot be written: {fault.Message}");
            return false;
        }
    }

    /// <summary>The exit code that the findings make, after what the caller lets count.</summary>
    internal static int Code(IEnumerable<Finding> findings, string[]? failOn)
    {
        bool tight = failOn?.Contains("tight", StringComparer.Ordinal) ?? false;
        bool unknown = failOn?.Contains("unknown", StringComparer.Ordinal) ?? false;
        bool fails = findings.Any(finding => finding.Verdict switch
        {
            Verdict.Fails => true,
            Verdict.Tight => tight,
            Verdict.Unknown => unknown,
            _ => false,
        });
        return fails ? ExitCode.FindingFails : ExitCode.Fine;
    }
}

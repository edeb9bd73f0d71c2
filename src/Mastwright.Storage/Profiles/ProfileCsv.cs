using System.Globalization;
using Mastwright.Ground;
using Mastwright.Propagation;

namespace Mastwright.Storage.Profiles;

/// <summary>Reads a path profile that the user gives: comma-separated columns distance_km, height_m, cover_m, zone.</summary>
/// <remarks>
/// The header line names the columns, in any order; cover_m and zone may be missing (no cover; inland). zone is sea, coast or
/// inland. Empty lines and lines that begin with # are passed over. The profile is used as given.
/// </remarks>
public static class ProfileCsv
{
    /// <summary>Most bytes that a profile file may have.</summary>
    public const long MaximumBytes = 32 * 1024 * 1024;

    /// <summary>Most points that a profile may have.</summary>
    public const int MaximumPoints = 500_000;

    private const int MostProblems = 20;

    /// <summary>Reads the file. Never throws for what the file holds.</summary>
    /// <param name="path">The file.</param>
    /// <param name="profile">The profile, or null when there is a problem.</param>
    /// <param name="problems">What is wrong, each with file and line, at most twenty; empty when the profile was read.</param>
    public static bool TryRead(string path, out PathProfile? profile, out IReadOnlyList<string> problems)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        profile = null;
        try
        {
            FileInfo file = new(path);
            if (!file.Exists)
            {
                problems = [$"{path}: there is no such file"];
                return false;
            }

            if (file.Length > MaximumBytes)
            {
                problems = [$"{path}: the file is larger than {MaximumBytes / (1024 * 1024)} MiB, the most that a profile may have"];
                return false;
            }

            return TryParse(File.ReadAllText(path), path, out profile, out problems);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            problems = [$"{path}: cannot be read: {fault.Message}"];
            return false;
        }
    }

    /// <summary>Reads the text of a profile file. Never throws for what the text holds.</summary>
    /// <param name="text">The text.</param>
    /// <param name="name">What to call the file in problems.</param>
    /// <param name="profile">The profile, or null when there is a problem.</param>
    /// <param name="problems">What is wrong, each with file and line; empty when the profile was read.</param>
    public static bool TryParse(string text, string name, out PathProfile? profile, out IReadOnlyList<string> problems)
    {
        ArgumentNullException.ThrowIfNull(text);
        Reading reading = new(name);
        int line = 0;
        foreach (ReadOnlySpan<char> row in text.AsSpan().EnumerateLines())
        {
            line++;
            ReadOnlySpan<char> content = row.Trim().TrimStart('\uFEFF');
            if (content.IsEmpty || content[0] == '#')
            {
                continue;
            }

            reading.Take(content.ToString().Split(','), line);
            if (reading.IsFull)
            {
                break;
            }
        }

        profile = reading.Finish();
        problems = reading.Problems;
        return profile is not null;
    }

    private sealed class Reading(string name)
    {
        private readonly List<double> distances = [];
        private readonly List<double> heights = [];
        private readonly List<double> covers = [];
        private readonly List<Zone> zones = [];
        private int[]? columns;
        private int width;

        public List<string> Problems { get; } = [];

        /// <summary>Whether reading on would say nothing new: enough problems, too many points, or a header that names no columns.</summary>
        public bool IsFull => Problems.Count >= MostProblems || distances.Count > MaximumPoints || (Problems.Count > 0 && distances.Count == 0);

        public void Take(string[] cells, int line)
        {
            if (columns is null)
            {
                TakeHeader(cells, line);
                return;
            }

            if (cells.Length != width)
            {
                Problem(line, $"there are {cells.Length} columns where the header names {width}");
                return;
            }

            double distance = Number(cells, 0, line, "distance_km", 0, 40_000) * 1000;
            if (distances.Count == 0 ? distance != 0 : distance <= distances[^1])
            {
                Problem(line, distances.Count == 0
                    ? "the first distance_km is not 0"
                    : $"distance_km is not greater than on the line before");
            }

            distances.Add(distance);
            heights.Add(Number(cells, 1, line, "height_m", -500, 9000));
            covers.Add(columns[2] < 0 ? 0 : Number(cells, 2, line, "cover_m", 0, 1000));
            zones.Add(columns[3] < 0 ? Zone.Inland : ZoneOf(cells[columns[3]].Trim(), line));
        }

        public PathProfile? Finish()
        {
            if (columns is null && Problems.Count == 0)
            {
                Problem(1, "the file is empty; its first line should be distance_km,height_m,cover_m,zone");
            }

            if (distances.Count > MaximumPoints)
            {
                Problem(MaximumPoints, $"there are more than {MaximumPoints} points");
            }

            if (Problems.Count == 0 && distances.Count < 3)
            {
                Problem(1, $"there are {distances.Count} points; a profile has at least three");
            }

            return Problems.Count > 0
                ? null
                : PathProfile.FromSamples([.. distances], [.. heights], [.. covers], [.. zones]);
        }

        private void TakeHeader(string[] cells, int line)
        {
            string[] known = ["distance_km", "height_m", "cover_m", "zone"];
            string[] named = [.. cells.Select(cell => cell.Trim())];
            foreach (string stranger in named.Except(known, StringComparer.Ordinal))
            {
                Problem(line, $"'{stranger}' is not a column of a profile; the columns are {string.Join(", ", known)}");
            }

            foreach (string twice in named.GroupBy(cell => cell, StringComparer.Ordinal).Where(group => group.Count() > 1).Select(group => group.Key))
            {
                Problem(line, $"the column '{twice}' is there twice");
            }

            columns = [.. known.Select(column => Array.IndexOf(named, column))];
            width = cells.Length;
            foreach (string wanted in known.Take(2).Where((_, i) => columns[i] < 0))
            {
                Problem(line, $"the column '{wanted}' is missing");
            }
        }

        private double Number(string[] cells, int which, int line, string column, double low, double high)
        {
            string text = cells[columns![which]].Trim();
            if (!double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) || !double.IsFinite(value))
            {
                Problem(line, $"{column} is '{text}', which is not a number (write 1.5, not 1,5)");
                return 0;
            }

            if (value < low || value > high)
            {
                Problem(line, string.Create(CultureInfo.InvariantCulture, $"{column} is {value}; it lies between {low} and {high}"));
            }

            return value;
        }

        private Zone ZoneOf(string text, int line)
        {
            switch (text)
            {
                case "sea":
                    return Zone.Sea;
                case "coast":
                    return Zone.Coast;
                case "inland":
                    return Zone.Inland;
                default:
                    Problem(line, $"zone is '{text}'; it is sea, coast or inland");
                    return Zone.Inland;
            }
        }

        private void Problem(int line, string text)
        {
            if (Problems.Count < MostProblems)
            {
                Problems.Add($"{name}:{line}: {text}");
            }
        }
    }
}

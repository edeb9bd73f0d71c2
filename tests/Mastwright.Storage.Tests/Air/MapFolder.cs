using System.Globalization;
using System.Text;
using Mastwright.Propagation;

namespace Mastwright.Storage.Tests.Air;

/// <summary>Digital maps made up for tests, in the layout of the published ones.</summary>
internal static class MapFolder
{
    /// <summary>The text of a map: value by row and column, written as the published files write numbers.</summary>
    internal static string Text(Func<int, int, double> valueAt, int rows = RefractivityMap.Rows, int columns = RefractivityMap.Columns)
    {
        StringBuilder text = new();
        for (int row = 0; row < rows; row++)
        {
            for (int column = 0; column < columns; column++)
            {
                text.Append(CultureInfo.InvariantCulture, $" {valueAt(row, column):0.0000000e+00}");
            }

            text.Append("\r\n");
        }

        return text.ToString();
    }

    internal static string Gradient { get; } = Text((row, column) => 30 + (0.25 * row) + (0.05 * Math.Min(column, 240 - column)));

    internal static string Surface { get; } = Text((row, _) => 390 - (0.5 * row));
}

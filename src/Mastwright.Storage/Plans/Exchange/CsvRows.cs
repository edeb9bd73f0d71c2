using System.Text;

namespace Mastwright.Storage.Plans.Exchange;

/// <summary>Splits separated values into rows of cells: quotes, doubled quotes and line breaks inside quotes as in RFC 4180.</summary>
internal static class CsvRows
{
    /// <summary>The rows that are not blank, each with the line it begins on. The separator is the one that the heading row uses most.</summary>
    internal static List<(int Line, List<string> Cells)> Split(string text)
    {
        ReadOnlySpan<char> heading = text.AsSpan();
        int end = heading.IndexOfAny('\r', '\n');
        heading = end < 0 ? heading : heading[..end];
        char separator = heading.Count(';') > heading.Count(',') ? ';' : heading.Count('\t') > heading.Count(',') ? '\t' : ',';

        List<(int, List<string>)> rows = [];
        List<string> cells = [];
        StringBuilder cell = new();
        bool quoted = false;
        int line = 1;
        int first = 1;
        for (int i = 0; i <= text.Length; i++)
        {
            char c = i < text.Length ? text[i] : '\n';
            if (quoted)
            {
                if (i == text.Length)
                {
                    throw new PlaceFaultException(first, "A quote that begins in this row never ends.", cell.ToString(), "a closing quote");
                }

                line += c == '\n' ? 1 : 0;
                if (c != '"')
                {
                    cell.Append(c);
                }
                else if (i + 1 < text.Length && text[i + 1] == '"')
                {
                    cell.Append('"');
                    i++;
                }
                else
                {
                    quoted = false;
                }
            }
            else if (c == '"' && cell.Length == 0)
            {
                cell.Clear();
                quoted = true;
            }
            else if (c == separator)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else if (c is '\n')
            {
                cells.Add(cell.ToString());
                cell.Clear();
                if (cells.Count > 1 || !string.IsNullOrWhiteSpace(cells[0]))
                {
                    rows.Add((first, cells));
                }

                cells = [];
                line++;
                first = line;
            }
            else if (c != '\r')
            {
                cell.Append(c);
            }
        }

        return rows;
    }
}

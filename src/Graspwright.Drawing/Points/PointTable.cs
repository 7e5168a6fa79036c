using System.Globalization;
using System.Text;

namespace Graspwright.Drawing.Points;

/// <summary>Named points as comma-separated text with the header <c>name,x_mm,y_mm</c>.</summary>
public static class PointTable
{
    private const string Header = "name,x_mm,y_mm";
    private const int MostRows = 10_000;
    private const int MostFaults = 50;

    /// <summary>The points as text. Coordinates are written in full, so that reading gives the same numbers.</summary>
    /// <param name="points">The points, names unlike each other.</param>
    /// <exception cref="ArgumentException">A point has a name or coordinate that could not be read back.</exception>
    public static string Write(IReadOnlyList<NamedPoint> points)
    {
        NamedPoint.Check(points);
        var text = new StringBuilder(Header).Append('\n');
        foreach (NamedPoint p in points)
        {
            text.Append(CultureInfo.InvariantCulture, $"{p.Name},{p.XMm:R},{p.YMm:R}\n");
        }

        return text.ToString();
    }

    /// <summary>The points of a text. Everything wrong in it is reported at once.</summary>
    /// <param name="text">Text of the file.</param>
    /// <param name="file">Name for messages.</param>
    /// <exception cref="DrawingFileException">Something in it can't be read.</exception>
    public static IReadOnlyList<NamedPoint> Read(string text, string file)
    {
        ArgumentNullException.ThrowIfNull(text);
        var points = new List<NamedPoint>();
        var faults = new List<FileFault>();
        var lines = new Dictionary<string, int>(StringComparer.Ordinal);
        using var reader = new StringReader(text.TrimStart('\uFEFF'));
        string? header = reader.ReadLine();
        if (!string.Equals(header?.TrimEnd(), Header, StringComparison.Ordinal))
        {
            string fix = header?.Contains(';', StringComparison.Ordinal) == true ? "Cells are parted by commas, not semicolons." : "Write this line above the points.";
            throw new DrawingFileException(new FileFault(file, 1, 1, "header", header is null ? "an empty file" : DrawingFileException.Shown(header), Header, fix));
        }

        int line = 1;
        while (reader.ReadLine() is { } row && faults.Count < MostFaults)
        {
            line++;
            if (row.Trim().Length == 0)
            {
                continue;
            }

            if (points.Count >= MostRows)
            {
                faults.Add(new(file, line, 0, "file", $"more than {MostRows} points", $"at most {MostRows}", "Is it the right file?"));
                break;
            }

            if (Row(row, file, line, faults) is not { } point)
            {
                continue;
            }

            if (!lines.TryAdd(point.Name, line))
            {
                faults.Add(new(file, line, 1, "name", DrawingFileException.Shown(point.Name), "each name once", $"It stands on line {lines[point.Name]} already."));
            }

            points.Add(point);
        }

        return faults.Count == 0 ? points : throw new DrawingFileException(faults);
    }

    private static NamedPoint? Row(string row, string file, int line, List<FileFault> faults)
    {
        string[] cells = row.Split(',');
        if (cells.Length != 3)
        {
            string fix = cells.Length is 4 or 5 ? "Decimals take a point, not a comma: 12.5." : "One point a line: its name, x and y.";
            faults.Add(new(file, line, 1, "row", $"{cells.Length} cells", "3 cells: " + Header, fix));
            return null;
        }

        int before = faults.Count;
        string name = cells[0].Trim();
        if (!NamedPoint.IsName(name))
        {
            faults.Add(new(file, line, 1, "name", DrawingFileException.Shown(name), NamedPoint.NameRule, "Rename the point; quotes are not used."));
        }

        double x = Coordinate(cells[1], file, line, cells[0].Length + 2, "x_mm", faults);
        double y = Coordinate(cells[2], file, line, cells[0].Length + cells[1].Length + 3, "y_mm", faults);
        return faults.Count == before ? new(name, x, y) : null;
    }

    private static double Coordinate(string cell, string file, int line, int column, string key, List<FileFault> faults)
    {
        const NumberStyles style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;
        if (double.TryParse(cell.Trim(), style, CultureInfo.InvariantCulture, out double value) && Math.Abs(value) <= NamedPoint.FarthestMm)
        {
            return value;
        }

        faults.Add(new(file, line, column, key, DrawingFileException.Shown(cell.Trim()), $"a number of millimetres within {NamedPoint.FarthestMm} of 0, with a decimal point and no unit", "Write 12.5 for 12½ mm."));
        return double.NaN;
    }
}

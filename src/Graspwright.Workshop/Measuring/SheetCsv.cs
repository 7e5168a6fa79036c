using System.Globalization;
using Graspwright.Hand;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measuring;

/// <summary>The measuring sheet as CSV: out with empty cells, back with readings.</summary>
/// <remarks>
/// One reading a line. Units stand in a column of their own behind each number, so that a scale that shows kilograms
/// or a lever in inches is written as it was read. A line whose value is empty was not measured.
/// </remarks>
public static class SheetCsv
{
    /// <summary>The header row.</summary>
    public const string Header = "measurement,where,when,angle_deg,try,value,unit,lever,lever_unit,dial,dial_unit,dial_arm,dial_arm_unit,remark";

    private const int MostRows = 2000;
    private const int MostErrors = 20;
    private static readonly string[] Names = Header.Split(',');

    /// <summary>The empty sheet of a hand.</summary>
    /// <param name="hand">The hand.</param>
    public static string Blank(HandModel hand) =>
        Header + "\n" + string.Concat(Protocol.Lines(hand).Select(l => string.Create(CultureInfo.InvariantCulture,
            $"{l.Measurement.Word()},{l.Where},{l.When},{(double.IsNaN(l.AngleDegrees) ? "" : l.AngleDegrees.ToString(CultureInfo.InvariantCulture))},{l.Try},,{l.Unit},,{(l.NeedsLever ? "mm" : "")},,{(l.NeedsDial ? "mm" : "")},,{(l.NeedsDial ? "mm" : "")},\n")));

    /// <summary>Reads a filled sheet.</summary>
    /// <param name="text">Text of the file.</param>
    /// <param name="file">Its name, for messages.</param>
    /// <returns>The readings, or everything that is wrong.</returns>
    public static (IReadOnlyList<Reading> Readings, IReadOnlyList<InputError> Errors) Read(string text, string file)
    {
        IReadOnlyList<CsvRow> rows = CsvRows.Read(text);
        var errors = new List<InputError>();
        string header = rows.Count == 0 ? "" : string.Join(',', rows[0].Cells);
        if (header != Header)
        {
            string fix = header.Contains(';', StringComparison.Ordinal) ? "Cells are parted by commas, not semicolons." : "Let 'measure HAND --csv FILE' write an empty sheet, and fill in its values.";
            return ([], [new(file, 1, 1, "header", rows.Count == 0 ? "an empty file" : Short(header), Header, fix)]);
        }

        var readings = new List<Reading>();
        foreach (CsvRow row in rows.Skip(1).Take(MostRows))
        {
            if (errors.Count < MostErrors && Line(row, file, errors) is { } reading)
            {
                readings.Add(reading);
            }
        }

        if (rows.Count > MostRows)
        {
            errors.Add(new(file, rows[MostRows].Line, 0, "file", $"more than {MostRows} lines", $"at most {MostRows}", "Is it the right file?"));
        }

        foreach (IGrouping<object, Reading> same in readings.GroupBy(r => (object)(r.Measurement, r.Where, r.When, r.AngleDegrees, r.Try)).Where(g => g.Count() > 1 && g.First().Measurement != Measurement.Give))
        {
            Reading twice = same.Last();
            errors.Add(new(file, twice.Line, 5, "try", $"the same reading as line {same.First().Line}", "each try once", "Count the tries 1, 2, 3."));
        }

        if (readings.Count == 0 && errors.Count == 0)
        {
            errors.Add(new(file, 0, 0, "value", "no line has a value", "at least one reading", "Fill in the column 'value'; lines without one count as not measured."));
        }

        return errors.Count == 0 ? (readings, []) : ([], errors);
    }

    private static Reading? Line(CsvRow row, string file, List<InputError> errors)
    {
        int before = errors.Count;
        if (row.Cells.Count != Names.Length)
        {
            Add(0, $"{row.Cells.Count} cells", $"{Names.Length} cells: {Header}", row.Cells.Count > Names.Length ? "Decimals take a point, not a comma: 12.5." : "Keep every comma of the empty sheet.");
            return null;
        }

        string Cell(string name) => row.Cells[Array.IndexOf(Names, name)];
        if (Cell("value").Length == 0)
        {
            return null;
        }

        if (Measurements.Find(Cell("measurement")) is not { } quantity)
        {
            Add(0, $"'{Short(Cell("measurement"))}'", string.Join(", ", Measurements.Words), Nearest.To(Cell("measurement"), Measurements.Words) is { } near ? $"Did you mean '{near}'?" : "Spell it as the empty sheet does.");
            return null;
        }

        ProtocolLine kind = Protocol.Kind(quantity);
        double angle = kind.NeedsAngle ? Number("angle_deg", -180, 360, "degrees, such as -20") : double.NaN;
        double tries = Cell("try").Length == 0 ? 1 : Number("try", 1, 99, "1, 2, 3 …");
        double value = Measured("value", "unit", kind.Dimension);
        double lever = kind.NeedsLever ? Measured("lever", "lever_unit", Dimension.Length, positive: true) : double.NaN;
        double dial = kind.NeedsDial ? Measured("dial", "dial_unit", Dimension.Length) : double.NaN;
        double arm = kind.NeedsDial ? Measured("dial_arm", "dial_arm_unit", Dimension.Length, positive: true) : double.NaN;
        if (kind.Dimension != Dimension.Length && value < 0)
        {
            Add(5, $"'{Short(Cell("value"))}', below nothing", "0 or more", "Which way it pulled is told by the first column.");
        }

        return errors.Count == before ? new(quantity, Cell("where"), Cell("when").ToLowerInvariant(), angle, (int)tries, value, lever, dial, arm, row.Line) : null;

        double Number(string name, double low, double high, string allowed)
        {
            string cell = Cell(name);
            if (double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && number >= low && number <= high)
            {
                return number;
            }

            Add(Array.IndexOf(Names, name), cell.Length == 0 ? "nothing" : $"'{Short(cell)}'", allowed, "Fill it in as the empty sheet has it.");
            return double.NaN;
        }

        double Measured(string name, string unitName, Dimension wanted, bool positive = false)
        {
            string cell = Cell(name), unit = Cell(unitName);

            // A luggage scale shows kilograms or pounds and means the force of that weight.
            string spelled = wanted == Dimension.Force ? unit switch { "kg" => "kgf", "lb" => "lbf", "g" => "gf", _ => unit } : unit;
            if (spelled == "gf")
            {
                Add(Array.IndexOf(Names, unitName), "'g'", "N, kg, lb", "Write the pull in kg.");
                return double.NaN;
            }

            if (Hand.Quantity.TryParse($"{cell} {spelled}", wanted, out Hand.Quantity? quantity, out QuantityFault? fault))
            {
                if (!positive || quantity.Si > 0)
                {
                    return quantity.Si;
                }

                Add(Array.IndexOf(Names, name), $"'{Short(cell)}'", "a length above 0", "Measure from the wrist's axis.");
                return double.NaN;
            }

            Add(Array.IndexOf(Names, name), cell.Length == 0 ? "nothing" : $"'{Short(cell)}' with the unit '{Short(unit)}'", $"a number with a decimal point in '{name}' and its unit in '{unitName}': {Unit.Symbols(wanted)}", $"{fault.Fix.TrimEnd('.')}.");
            return double.NaN;
        }

        void Add(int cell, string found, string allowed, string fix) =>
            errors.Add(new(file, row.Line, row.Columns[Math.Min(cell, row.Columns.Count - 1)], Names[cell], found, allowed, fix));
    }

    private static string Short(string text) => text.Length <= 40 ? text : text[..40] + "…";
}

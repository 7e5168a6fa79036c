using System.Globalization;
using System.Text;
using Graspwright.Hand;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Strength;

/// <summary>Reads a recorded history of the wrist's moment.</summary>
public static class MomentHistory
{
    /// <summary>Name of the column.</summary>
    public const string Column = "moment [N·m]";

    private const int MostErrors = 20;

    /// <summary>Reads the history that a hand file names.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="handFile">Path of its file.</param>
    /// <returns>The moments [N·m], or what is wrong; neither where the hand file names none.</returns>
    public static (IReadOnlyList<double>? Moments, IReadOnlyList<InputError> Errors) Of(HandModel hand, string handFile)
    {
        ArgumentNullException.ThrowIfNull(hand);
        if (hand.Structure.Use.History is not { } said)
        {
            return (null, []);
        }

        try
        {
            (IReadOnlyList<double> moments, IReadOnlyList<InputError> errors) = Read(File.ReadAllText(Path.Combine(Path.GetDirectoryName(Path.GetFullPath(handFile))!, said.File), Encoding.UTF8), said.File);
            return errors.Count > 0 ? (null, errors) : (moments, []);
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException)
        {
            return (null, [new(said.File, 0, 0, "use.history.file", $"the file cannot be read ({refusal.Message.TrimEnd('.')})", "a CSV file with a column named moment [N·m]", "Check its name and folder, or remove [use.history].")]);
        }
    }

    /// <summary>Reads the column of moments of a CSV text with a header row.</summary>
    /// <param name="text">The text.</param>
    /// <param name="file">Name of the file, for messages.</param>
    /// <returns>The moments in the order of the rows [N·m], or what is wrong.</returns>
    public static (IReadOnlyList<double> Moments, IReadOnlyList<InputError> Errors) Read(string text, string file)
    {
        ArgumentNullException.ThrowIfNull(text);
        string[] lines = text.TrimStart('\uFEFF').Split('\n');
        string[] head = [.. lines[0].TrimEnd('\r').Split(',').Select(h => h.Trim())];
        int column = Array.IndexOf(head, Column);
        if (column < 0)
        {
            return ([], [new(file, 1, 1, Column, $"the columns {string.Join(", ", head)}", $"a column named {Column}", "Name the column of moments so.")]);
        }

        List<double> moments = [];
        List<InputError> errors = [];
        for (int i = 1; i < lines.Length && errors.Count < MostErrors; i++)
        {
            string line = lines[i].TrimEnd('\r');
            if (line.Trim().Length == 0)
            {
                continue;
            }

            string[] cells = line.Split(',');
            string cell = column < cells.Length ? cells[column].Trim() : "";
            if (double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out double moment) && double.IsFinite(moment))
            {
                moments.Add(moment);
            }
            else
            {
                errors.Add(new(file, i + 1, 1 + cells.Take(column).Sum(c => c.Length + 1), Column, cell.Length == 0 ? "nothing" : $"'{cell}'", "a number with a decimal point", "Put the reading there or delete the row."));
            }
        }

        if (errors.Count == 0 && moments.Count < 2)
        {
            errors.Add(new(file, 0, 0, Column, moments.Count == 0 ? "no reading" : "one reading", "two readings or more", "A history needs at least a rise or a fall."));
        }

        return (moments, errors);
    }
}

using Graspwright.Drawing.Display;
using Graspwright.Drawing.Fonts;

namespace Graspwright.Book.Pages;

/// <summary>A place to write in by pen.</summary>
/// <param name="Label">What belongs there.</param>
/// <param name="Unit">Unit behind it; nothing where empty.</param>
/// <param name="WidthMm">Length of the line to write on [mm].</param>
public sealed record FormField(string Label, string Unit = "", double WidthMm = 28);

public sealed partial class PageFlow
{
    /// <summary>Places to write in, side by side as far as they fit.</summary>
    /// <param name="fields">The places.</param>
    public void Fields(IReadOnlyList<FormField> fields)
    {
        ArgumentNullException.ThrowIfNull(fields);
        const double row = 8.5, gap = 6;
        double x = SideMm;
        Need(row);
        y -= row;
        foreach (FormField field in fields)
        {
            double label = ShippedFont.WidthMm(field.Label, Type.Body) + 2;
            double unit = field.Unit.Length == 0 ? 0 : ShippedFont.WidthMm(field.Unit, Type.Body) + 1.5;
            if (x > SideMm && x + label + field.WidthMm + unit > SideMm + WidthMm)
            {
                x = SideMm;
                Need(row);
                y -= row;
            }

            double line = Math.Max(10, Math.Min(field.WidthMm, SideMm + WidthMm - x - label - unit));
            page.Text(new(x, y), field.Label, Type.Body);
            page.Line(new(x + label, y - 0.8), new(x + label + line, y - 0.8), Pen.Thin);
            page.Text(new(x + label + line + 1.5, y), field.Unit, Type.Body);
            x += label + line + unit + gap;
        }

        Space(3);
    }

    /// <summary>Empty lines to write on.</summary>
    /// <param name="label">What belongs there.</param>
    /// <param name="lines">How many lines, at least one.</param>
    public void WritingLines(string label, int lines)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(lines, 1);
        const double row = 8;
        Need(Type.Room(1, Type.Body) + lines * row);
        Line(label, Type.Body, strong: false, SideMm);
        for (int i = 0; i < lines; i++)
        {
            y -= row;
            page.Line(new(SideMm, y), new(SideMm + WidthMm, y), Pen.Pale);
        }

        Space(3);
    }

    /// <summary>A place for name, date and signature.</summary>
    /// <param name="role">Who signs: <c>Tested by</c>.</param>
    public void Signature(string role) => Fields([new(role, WidthMm: 52), new("date", WidthMm: 26), new("signed", WidthMm: 40)]);
}

using System.Globalization;
using Graspwright.Drawing.Display;

namespace Graspwright.Book.Pages;

/// <summary>A ruler to lay a real ruler against: it shows whether the printer kept the size.</summary>
public static class CheckRuler
{
    /// <summary>Length of every ruler [mm].</summary>
    public const double LengthMm = 100;

    /// <summary>Layer of the picture that rulers are drawn on.</summary>
    public const string Layer = "ruler";

    /// <summary>A ruler to the right.</summary>
    /// <param name="page">Page to draw on.</param>
    /// <param name="zero">Foot of its first stroke.</param>
    public static void Lying(Picture page, Place zero) => Draw(page, zero, along: new(1, 0), side: new(0, 1));

    /// <summary>A ruler upwards: some printers stretch the paper's way only.</summary>
    /// <param name="page">Page to draw on.</param>
    /// <param name="zero">Foot of its first stroke.</param>
    public static void Standing(Picture page, Place zero) => Draw(page, zero, along: new(0, 1), side: new(-1, 0));

    private static void Draw(Picture page, Place zero, Place along, Place side)
    {
        ArgumentNullException.ThrowIfNull(page);
        page.OnLayer(Layer);
        page.Line(zero, At(LengthMm, 0), new(0.18));
        for (int mm = 0; mm <= LengthMm; mm++)
        {
            double tall = mm % 10 == 0 ? 3 : mm % 5 == 0 ? 2.2 : 1.4;
            page.Line(At(mm, 0), At(mm, tall), mm % 10 == 0 ? new(0.18) : Pen.Hair);
            if (mm % 10 == 0)
            {
                page.Text(At(mm, 3.6), mm.ToString(CultureInfo.InvariantCulture), 1.4, along.X > 0 ? Across.Middle : Across.Right, along.X > 0 ? Level.Baseline : Level.Middle);
            }
        }

        page.OnLayer("page");

        Place At(double a, double s) => zero.Moved(a * along.X + s * side.X, a * along.Y + s * side.Y);
    }
}

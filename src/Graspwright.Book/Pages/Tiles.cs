using Graspwright.Drawing.Display;

namespace Graspwright.Book.Pages;

/// <summary>A window of a picture that is larger than the paper.</summary>
/// <param name="Name">Its name: a letter for the row, a number for the column.</param>
/// <param name="Picture">What it shows, with the marks that join it to its neighbours.</param>
public sealed record Tile(string Name, Picture Picture);

/// <summary>Cuts a picture into windows that overlap, at full size.</summary>
public static class Tiles
{
    /// <summary>How far neighbours overlap [mm].</summary>
    public const double OverlapMm = 10;

    /// <summary>Cuts.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="widthMm">Width of a window [mm].</param>
    /// <param name="heightMm">Height of a window [mm].</param>
    public static IReadOnlyList<Tile> Of(Picture picture, double widthMm, double heightMm)
    {
        ArgumentNullException.ThrowIfNull(picture);
        double stepX = widthMm - OverlapMm, stepY = heightMm - OverlapMm;
        int columns = Math.Max(1, (int)Math.Ceiling((picture.WidthMm - OverlapMm) / stepX)), rows = Math.Max(1, (int)Math.Ceiling((picture.HeightMm - OverlapMm) / stepY));
        List<Tile> tiles = [];
        for (int r = 0; r < rows; r++)
        {
            for (int c = 0; c < columns; c++)
            {
                // rows are counted from the top
                double left = c * stepX, low = picture.HeightMm - (r + 1) * stepY - OverlapMm;
                string name = $"{(char)('A' + r)}{c + 1}";
                Picture window = new(widthMm, heightMm, $"{picture.Title}, {name}", $"Window {name} of {picture.Title}");
                bool any = Draw(picture, window, left, low);
                if (any)
                {
                    Join(window, r, c, rows, columns, name);
                    tiles.Add(new(name, window));
                }
            }
        }

        return tiles;
    }

    private static bool Draw(Picture picture, Picture window, double left, double low)
    {
        bool any = false;
        foreach (Mark mark in picture.Marks)
        {
            window.OnLayer(mark.Layer);
            switch (mark)
            {
                case LineMark m:
                    any |= Line(window, m.From.Moved(-left, -low), m.To.Moved(-left, -low), m.Pen);
                    break;
                case PolylineMark m when m.Pen is { } pen:
                    any |= Run(window, [.. m.Places.Concat(m.Closed ? m.Places.Take(1) : []).Select(p => p.Moved(-left, -low))], pen);
                    break;
                case PolylineMark m when m.Places.All(p => Inside(window, p.Moved(-left, -low))):
                    window.Outline([.. m.Places.Select(p => p.Moved(-left, -low))], m.Pen, m.Fill);
                    any = true;
                    break;
                case CircleMark m when Inside(window, m.Centre.Moved(-left, -low)):
                    window.Circle(m.Centre.Moved(-left, -low), m.RadiusMm, m.Pen, m.Fill);
                    any = true;
                    break;
                case TextMark m when Inside(window, m.At.Moved(-left, -low)):
                    window.Text(m.At.Moved(-left, -low), m.Text, m.HeightMm, m.Across, m.Level, m.Ink, m.Strong, m.AngleRadians);
                    any = true;
                    break;
            }
        }

        return any;
    }

    // Frame, crosses at the corners of what overlaps, and which window comes beside it.
    private static void Join(Picture window, int row, int column, int rows, int columns, string name)
    {
        double w = window.WidthMm, h = window.HeightMm, o = OverlapMm;
        window.OnLayer("joining");
        foreach ((bool on, double x0, double y0, double x1, double y1, string beside, double tx, double ty) in ((bool, double, double, double, double, string, double, double)[])
            [(column > 0, o, 0, o, h, $"{(char)('A' + row)}{column}", o / 2, h / 2), (column + 1 < columns, w - o, 0, w - o, h, $"{(char)('A' + row)}{column + 2}", w - o / 2, h / 2),
             (row > 0, 0, h - o, w, h - o, $"{(char)('A' + row - 1)}{column + 1}", w / 2, h - o / 2), (row + 1 < rows, 0, o, w, o, $"{(char)('A' + row + 1)}{column + 1}", w / 2, o / 2)])
        {
            if (on)
            {
                window.Line(new(x0, y0), new(x1, y1), new Pen(0.13, Ink.Pale, Dash.Dashed));
                window.Text(new(tx, ty), beside, 2.3, Across.Middle, Level.Middle, Ink.Pale);
            }
        }

        foreach (double x in (double[])[o / 2, w - o / 2])
        {
            foreach (double y in (double[])[o / 2, h - o / 2])
            {
                window.Line(new(x - 2.5, y), new(x + 2.5, y), Pen.Hair);
                window.Line(new(x, y - 2.5), new(x, y + 2.5), Pen.Hair);
            }
        }

        window.Text(new(o + 2, h - o - 5), name, 3.5, strong: true);
    }

    private static bool Inside(Picture window, Place p) => p.X >= 0 && p.Y >= 0 && p.X <= window.WidthMm && p.Y <= window.HeightMm;

    // What of a run of lines lies inside stays one run, so that its dashes go on from piece to piece.
    private static bool Run(Picture window, Place[] places, Pen pen)
    {
        bool any = false;
        List<Place> run = [];
        for (int i = 0; i + 1 < places.Length; i++)
        {
            if (Inside(window, places[i], places[i + 1]) is not { } part)
            {
                continue;
            }

            if (run.Count == 0 || run[^1] != part.From)
            {
                End();
                run = [part.From];
            }

            run.Add(part.To);
            any = true;
        }

        End();
        return any;

        void End()
        {
            if (run.Count > 1)
            {
                window.Polyline(run, pen);
            }
        }
    }

    private static bool Line(Picture window, Place a, Place b, Pen pen)
    {
        if (Inside(window, a, b) is not { } part)
        {
            return false;
        }

        window.Line(part.From, part.To, pen);
        return true;
    }

    // The part of a line inside the window (Liang and Barsky 1984).
    private static (Place From, Place To)? Inside(Picture window, Place a, Place b)
    {
        double t0 = 0, t1 = 1, dx = b.X - a.X, dy = b.Y - a.Y;
        foreach ((double p, double q) in (ReadOnlySpan<(double, double)>)[(-dx, a.X), (dx, window.WidthMm - a.X), (-dy, a.Y), (dy, window.HeightMm - a.Y)])
        {
            if (p == 0)
            {
                if (q < 0)
                {
                    return null;
                }

                continue;
            }

            double t = q / p;
            (t0, t1) = p < 0 ? (Math.Max(t0, t), t1) : (t0, Math.Min(t1, t));
        }

        return t0 >= t1 ? null : (t0 > 0 ? new(a.X + t0 * dx, a.Y + t0 * dy) : a, t1 < 1 ? new(a.X + t1 * dx, a.Y + t1 * dy) : b);
    }
}

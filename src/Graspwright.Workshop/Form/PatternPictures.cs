using System.Globalization;
using Graspwright.Drawing.Display;
using Graspwright.Form.Pattern;
using Graspwright.Form.Surface;

namespace Graspwright.Workshop.Form;

/// <summary>The paper pattern at full size.</summary>
public static class PatternPictures
{
    private const double Room = 8, NotchMm = 4, Foot = 10;
    private const int MostLooks = 1500;

    /// <summary>All pieces side by side, full size, fingertips up, outer side up.</summary>
    /// <param name="result">The pattern.</param>
    /// <param name="stretch">With lines of equal stretch.</param>
    /// <param name="ruler">With a ruler of 100 mm.</param>
    public static Picture FullSize(PatternResult result, bool stretch = false, bool ruler = true)
    {
        ArgumentNullException.ThrowIfNull(result);
        double width = Math.Max(result.Pieces.Sum(p => 1000 * p.Width + Room) + Room, 120), foot = ruler ? Foot + 8 : Room;
        Picture picture = new(width, result.Pieces.Max(p => 1000 * p.Height) + foot + Room, "paper pattern", result.Answer?.Sentence ?? "Paper pattern.");
        double left = Room;
        foreach (PaperPiece piece in result.Pieces)
        {
            Draw(picture, piece, left, foot, stretch);
            left += 1000 * piece.Width + Room;
        }

        if (ruler)
        {
            Ruler(picture);
        }

        return picture;
    }

    /// <summary>Pages on which every piece lies whole, full size; <see langword="null"/> = one of them is larger than a page.</summary>
    /// <param name="result">The pattern.</param>
    /// <param name="widthMm">Width of a page [mm].</param>
    /// <param name="heightMm">Height of a page [mm].</param>
    public static IReadOnlyList<Picture>? Pages(PatternResult result, double widthMm, double heightMm)
    {
        ArgumentNullException.ThrowIfNull(result);
        // rows of pieces side by side, rows above each other: each piece where there is room first
        List<List<List<PaperPiece>>> pages = [];
        foreach (PaperPiece piece in result.Pieces)
        {
            if (Wide([piece]) > widthMm || High([[piece]]) > heightMm)
            {
                return null;
            }

            if (pages.SelectMany(p => p).FirstOrDefault(r => Wide([.. r, piece]) <= widthMm && piece.Height <= r.Max(o => o.Height)) is { } row)
            {
                row.Add(piece);
            }
            else if (pages.Find(p => High([.. p, [piece]]) <= heightMm) is { } page)
            {
                page.Add([piece]);
            }
            else
            {
                pages.Add([[piece]]);
            }
        }

        return [.. pages.Select((page, i) => Page(result, page, widthMm, heightMm, i))];

        static double Wide(List<PaperPiece> row) => row.Sum(p => 1000 * p.Width + Room) + Room;
        static double High(List<List<PaperPiece>> rows) => rows.Sum(r => 1000 * r.Max(p => p.Height) + Room) + Room;
    }

    private static Picture Page(PatternResult result, List<List<PaperPiece>> rows, double widthMm, double heightMm, int index)
    {
        Picture picture = new(widthMm, heightMm, string.Create(CultureInfo.InvariantCulture, $"paper pattern, page {index + 1}"), result.Answer?.Sentence ?? "Paper pattern.");
        double top = heightMm - Room;
        foreach (List<PaperPiece> row in rows)
        {
            double left = Room, height = 1000 * row.Max(p => p.Height);
            foreach (PaperPiece piece in row)
            {
                Draw(picture, piece, left, top - height, stretch: false);
                left += 1000 * piece.Width + Room;
            }

            top -= height + Room;
        }

        return picture;
    }

    private static void Draw(Picture picture, PaperPiece piece, double left, double low, bool stretch)
    {
        Place At((double X, double Y) p) => new(left + 1000 * p.X, low + 1000 * p.Y);
        Place Flat(double x, double y) => At(piece.Place(x, y));
        PatternPiece pattern = piece.Pattern;
        if (stretch)
        {
            Stretch(picture, piece, At);
        }

        picture.OnLayer("skin and hollows");
        foreach ((string words, IReadOnlyList<((double X, double Y) From, (double X, double Y) To)> line) in piece.Lines)
        {
            foreach (((double X, double Y) from, (double X, double Y) to) in line)
            {
                picture.Line(At(from), At(to), words == "hollow" ? new Pen(0.25, Ink.Accent) : new Pen(0.18, Ink.Pale));
            }
        }

        picture.OnLayer("cut").Outline([.. pattern.CutLine.Select(p => Flat(p.X, p.Y))], Pen.Main);
        picture.OnLayer("seam");
        foreach (RimRun run in pattern.Runs.Where(r => r.Seam >= 0))
        {
            picture.Polyline([.. run.Points.Select(v => Flat(pattern.Flat.X[v], pattern.Flat.Y[v]))], new Pen(0.25, Ink.Ink, Dash.Dashed));
        }

        picture.OnLayer("notches");
        foreach (Notch notch in pattern.Notches)
        {
            Place at = Flat(notch.X, notch.Y), end = Flat(notch.X + NotchMm / 1000 * notch.OutX, notch.Y + NotchMm / 1000 * notch.OutY);
            Place inside = at.Toward(end.DirectionTo(at), 4.5);
            picture.Line(at.Toward(at.DirectionTo(inside), 2), end, Pen.Thin);
            picture.Text(inside, notch.Letter, 2.3, Across.Middle, Level.Middle);
        }

        picture.OnLayer("marks");
        foreach (PatternMark mark in piece.Marks)
        {
            Place at = At((mark.X, mark.Y));
            if (mark.Kind == "hollow")
            {
                picture.Circle(at, 1.6, new Pen(0.25, Ink.Accent));
            }
            else
            {
                picture.Line(at.Moved(-2, 0), at.Moved(2, 0), Pen.Thin);
                picture.Line(at.Moved(0, -2), at.Moved(0, 2), Pen.Thin);
            }

            // words that would run off the piece stand on the other side of their mark
            bool beyond = 1000 * mark.X + 2.6 + Lettering.WidthMm(mark.Words, 2.1) > 1000 * piece.Width;
            picture.Text(at.Moved(beyond ? -2.6 : 2.6, 0.8), mark.Words, 2.1, beyond ? Across.Right : Across.Left);
        }

        Wires(picture, piece, At);
        Words(picture, piece, left, low);
    }

    // Lines to copy onto the sheet: the groove for a wire is cut or pressed along them.
    private static void Wires(Picture picture, PaperPiece piece, Func<(double X, double Y), Place> at)
    {
        picture.OnLayer("wires");
        foreach (WireOnPaper wire in piece.Wires)
        {
            foreach (IReadOnlyList<(double X, double Y)> run in wire.Runs)
            {
                picture.Polyline([.. run.Select(at)], new Pen(0.35, Ink.Ink, Dash.Dotted));
            }

            IReadOnlyList<(double X, double Y)> longest = wire.Runs.MaxBy(r => r.Count)!;
            picture.Text(at(longest[longest.Count / 2]).Moved(1.2, 1), wire.Name, 2.1);
        }
    }

    private static void Words(Picture picture, PaperPiece piece, double left, double low)
    {
        picture.OnLayer("words");
        (double x, double y, double room) = Roomiest(piece);
        Place centre = new(left + 1000 * x, low + 1000 * y);
        double size = Math.Clamp(1000 * room / 6, 1.6, 4), arrow = Math.Min(25, 1000 * room - size);
        picture.Text(centre, piece.Name, size, Across.Middle, strong: true);
        picture.Text(centre.Moved(0, -1.7 * size), "outer side up", 0.6 * size, Across.Middle);
        Place tail = centre.Moved(0, 1.6 * size);
        picture.Arrow(tail, tail.Moved(0, arrow), Pen.Thin);
        picture.Text(tail.Moved(1.5, 0.5), "to the fingertips", Math.Min(0.55 * size, arrow / 9), angleRadians: Math.PI / 2, level: Level.Top);
    }

    // The place on the piece that is farthest from its outline, and how far: a sleeve is a bow, whose middle lies beside it.
    private static (double X, double Y, double Room) Roomiest(PaperPiece piece)
    {
        (double X, double Y)[] line = [.. piece.Pattern.SewLine.Select(p => piece.Place(p.X, p.Y))];
        Mesh mesh = piece.Pattern.Piece.Sides.Mesh;
        int step = Math.Max(1, mesh.PointCount / MostLooks);
        (double X, double Y, double Room) best = (0, 0, -1);
        for (int v = 0; v < mesh.PointCount; v += step)
        {
            (double x, double y) = piece.Place(piece.Pattern.Flat.X[v], piece.Pattern.Flat.Y[v]);
            double least = double.PositiveInfinity;
            for (int i = 0, j = line.Length - 1; i < line.Length; j = i++)
            {
                double dx = line[i].X - line[j].X, dy = line[i].Y - line[j].Y, t = Math.Clamp(((x - line[j].X) * dx + (y - line[j].Y) * dy) / Math.Max(dx * dx + dy * dy, 1e-30), 0, 1);
                least = Math.Min(least, double.Hypot(x - line[j].X - t * dx, y - line[j].Y - t * dy));
            }

            best = least > best.Room ? (x, y, least) : best;
        }

        return best;
    }

    // Lines of equal stretch: how much the sheet gives when it is laid on, + pulled, − squeezed.
    private static void Stretch(Picture picture, PaperPiece piece, Func<(double X, double Y), Place> at)
    {
        Mesh mesh = piece.Pattern.Piece.Sides.Mesh;
        double[] sum = new double[mesh.PointCount], count = new double[mesh.PointCount];
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            double most = piece.Pattern.Flat.Most[f], least = piece.Pattern.Flat.Least[f], pulled = least > 0 ? 1 / least - 1 : 1, squeezed = most - 1, value = pulled > squeezed ? pulled : -squeezed;
            for (int k = 0; k < 3; k++)
            {
                sum[mesh.Corners[3 * f + k]] += value;
                count[mesh.Corners[3 * f + k]]++;
            }
        }

        double[] mean = [.. sum.Select((s, v) => s / Math.Max(1, count[v]))];
        picture.OnLayer("stretch");
        foreach (double level in (double[])[-0.08, -0.05, -0.03, -0.02, -0.01, 0.01, 0.02, 0.03, 0.05, 0.08])
        {
            IReadOnlyList<((double X, double Y) From, (double X, double Y) To)> line = PaperPieces.Level(piece.Pattern, mesh, mean, level, piece.Place);
            foreach (((double X, double Y) from, (double X, double Y) to) in line)
            {
                picture.Line(at(from), at(to), new Pen(0.13 + 2 * Math.Abs(level), level > 0 ? Ink.Accent : Ink.Pale));
            }

            if (line.Count > 8)
            {
                picture.Text(at(line[line.Count / 2].From), string.Create(CultureInfo.InvariantCulture, $"{(level > 0 ? "+" : "−")}{100 * Math.Abs(level):0} %"), 1.8, Across.Middle, Level.Middle);
            }
        }
    }

    private static void Ruler(Picture picture)
    {
        picture.OnLayer("ruler").Line(new(Room, 5), new(Room + 100, 5), new(0.18));
        for (int mm = 0; mm <= 100; mm++)
        {
            picture.Line(new(Room + mm, 5), new(Room + mm, mm % 10 == 0 ? 8 : mm % 5 == 0 ? 7.2 : 6.4), mm % 10 == 0 ? new(0.18) : Pen.Hair);
        }

        picture.Text(new(Room, 2), "100 mm: measure before you cut", 2.1);
    }
}

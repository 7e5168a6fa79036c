using System.Globalization;
using Graspwright.Drawing.Display;
using Graspwright.Signals.Sites;

namespace Graspwright.Workshop.Signals;

/// <summary>The paper pattern at full size with the places of the contacts and how far each may slip.</summary>
public static class SitesPicture
{
    private const double Margin = 12, Head = 24, Foot = 16, Letter = 2.6;

    /// <summary>Draws it.</summary>
    /// <param name="result">An answer with a map.</param>
    public static Picture Draw(SitesResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        SiteMap map = result.Map ?? throw new ArgumentException("An answer without a map.", nameof(result));
        Place[] all = [.. map.Pattern.SelectMany(l => new[] { l.From, l.To }), .. map.Sites.SelectMany(Ends)];
        double left = all.Min(p => p.X) - 6, right = all.Max(p => p.X) + 6, low = all.Min(p => p.Y) - 6, high = all.Max(p => p.Y) + 6;
        double width = Math.Max(right - left + 2 * Margin, 130);
        IReadOnlyList<string> lines = Lettering.Wrap(result.Answer!.Sentence, width - 2 * Margin, Letter);
        double head = Head + Math.Max(0, lines.Count - 2) * 5;
        Picture picture = new(width, high - low + head + Foot, "Contacts on the paper pattern", result.Answer.Sentence);
        Place At(double x, double y) => new(Margin + x - left, Foot + y - low);

        picture.OnLayer("pattern");
        foreach ((Place from, Place to) in map.Pattern)
        {
            picture.Line(At(from.X, from.Y), At(to.X, to.Y), Pen.Main);
        }

        picture.OnLayer("placement windows");
        for (int i = 0; i < result.Windows.Count; i++)
        {
            Site site = map.Sites[result.Chosen[i]];
            Place centre = At(site.XMm, site.YMm);
            Place[] edge = [.. result.Windows[i].Select(w => centre.Toward(w.DirectionDegrees * Math.PI / 180, w.SlipMm))];
            picture.Outline(edge, pen: null, Ink.Wash);
            for (int d = 0; d < edge.Length; d++)
            {
                int next = (d + 1) % edge.Length;
                bool open = result.Windows[i][d].EndsAtMap || result.Windows[i][next].EndsAtMap;
                picture.Line(edge[d], edge[next], new(0.3, Ink.Accent, open ? Dash.Dotted : Dash.Solid));
            }
        }

        picture.OnLayer("sites");
        for (int i = 0; i < map.Sites.Count; i++)
        {
            Pair(picture, map.Sites[i], At, result.Chosen.Contains(i));
        }

        Words(picture, lines, width);
        return picture;
    }

    private static void Pair(Picture picture, Site site, Func<double, double, Place> at, bool chosen)
    {
        Place[] ends = [.. Ends(site).Select(p => at(p.X, p.Y))];
        Pen pen = chosen ? Pen.Main : Pen.Pale;
        picture.Line(ends[0], ends[1], pen);
        foreach (Place end in ends)
        {
            picture.Circle(end, chosen ? 1.8 : 1, pen, chosen ? Ink.Paper : null);
        }

        Place name = at(site.XMm, site.YMm).Moved(1.6, 0);
        picture.Text(name, site.Name, chosen ? 2.6 : 1.8, Across.Left, Level.Middle, chosen ? Ink.Ink : Ink.Pale, strong: chosen);
    }

    private static void Words(Picture picture, IReadOnlyList<string> lines, double width)
    {
        picture.OnLayer("words");
        double y = picture.HeightMm - 8;
        foreach (string line in lines)
        {
            picture.Text(new(Margin, y), line, Letter);
            y -= 5;
        }

        picture.OnLayer("ruler");
        Place zero = new(Margin, 9);
        double length = width >= 100 + 2 * Margin ? 100 : 50;
        picture.Line(zero, zero.Moved(length, 0), Pen.Thin);
        for (int mm = 0; mm <= length; mm += 5)
        {
            picture.Line(zero.Moved(mm, 0), zero.Moved(mm, mm % 10 == 0 ? 2.4 : 1.4), Pen.Thin);
        }

        picture.Text(zero.Moved(0, -4.2), string.Create(CultureInfo.InvariantCulture, $"{length:0} mm when printed at 100 %. Tinted: how far a pair may slip while the others stay; dotted: the map ends there."), 1.9);
    }

    private static Place[] Ends(Site site)
    {
        (double sin, double cos) = Math.SinCos(site.DirectionDegrees * Math.PI / 180);
        double half = site.SpacingMm / 2;
        return [new(site.XMm - half * cos, site.YMm - half * sin), new(site.XMm + half * cos, site.YMm + half * sin)];
    }
}

using System.Globalization;
using System.Text;
using Graspwright.Strength.Life;
using Graspwright.Strength.Lives;
using Graspwright.Workshop.Log;

namespace Graspwright.Workshop.Tests.Log;

/// <summary>Makes the boatyard's log of parts. It is invented: lives are drawn from the laws below by a seeded draw, then written as a maker would have.</summary>
/// <remarks>
/// The story: fingers printed in PLA (revision A) from June 2025; outer fingers, knocked from the side, live half as long as inner ones.
/// On 10 November all four come off whole for PETG and thicker ears (revision B), which live 1.6 times as long. One break in three is
/// only found days later. Pins and cords seldom break, the return springs never, the liner was changed once.
/// </remarks>
internal static class BoatyardLog
{
    private const double Shape = 1.9;

    private static readonly DateOnly Begin = new(2025, 6, 2), NewRevision = new(2025, 11, 10), End = new(2026, 3, 31);

    public static string Text()
    {
        Chance chance = new(41);
        List<(DateOnly Day, string Line)> lines = [];
        foreach ((string finger, double scale) in ((string, double)[])[("index", 26), ("middle", 48), ("ring", 50), ("little", 22)])
        {
            Run(ref chance, lines, "finger", finger, "pla-along", "A", Begin, NewRevision, scale, "new revision");
            Run(ref chance, lines, "finger", finger, "petg-along", "B", NewRevision, End, 1.6 * scale, "");
            Run(ref chance, lines, "pin", $"{finger} mcp", "stainless-304", "", Begin, End, 260, "");
            Run(ref chance, lines, "cord", finger, "", "", Begin, End, 400, "");
            Run(ref chance, lines, "spring", $"{finger} mcp", "", "", Begin, End, 5000, "");
        }

        lines.Add((Begin, "liner,,,,2025-06-02,2025-12-01,2025-12-01,retired,worn soft"));
        lines.Add((new(2025, 12, 1), "liner,,,,2025-12-01,2026-03-31,,,"));
        StringBuilder text = new(LogReader.Header + "\n");
        foreach ((_, string line) in lines.OrderBy(l => l.Day))
        {
            text.Append(line).Append('\n');
        }

        return text.ToString();
    }

    private static void Run(ref Chance chance, List<(DateOnly, string)> lines, string part, string position, string material, string revision, DateOnly from, DateOnly to, double scale, string retired)
    {
        LifeLaw law = LifeLaw.Weibull(scale, Shape);
        for (DateOnly fitted = from; fitted < to;)
        {
            int life = (int)Math.Ceiling(law.Quantile(chance.Next()));
            double draw = chance.Next();
            DateOnly broke = fitted.AddDays(life), seen = to.AddDays(-(int)(3 * draw));
            if (broke >= to)
            {
                lines.Add((fitted, retired.Length > 0
                    ? $"{part},{position},{material},{revision},{Day(fitted)},{Day(to)},{Day(to)},retired,{retired}"
                    : $"{part},{position},{material},{revision},{Day(fitted)},{Day(seen > fitted ? seen : fitted)},,,"));
                return;
            }

            string cause = part == "finger" ? (chance.Next() < 0.6 ? "knock" : "cracked at the ear") : part == "cord" ? "frayed" : "bent";
            int late = draw < 1.0 / 3 ? 1 + (int)(9 * draw) : 0;
            DateOnly found = broke.AddDays(late) < to ? broke.AddDays(late) : broke, whole = broke.AddDays(-1 - (int)(3 * draw));
            lines.Add((fitted, late > 0
                ? $"{part},{position},{material},{revision},{Day(fitted)},{Day(whole > fitted ? whole : fitted)},{Day(found)},found broken,{cause}"
                : $"{part},{position},{material},{revision},{Day(fitted)},,{Day(broke)},broke,{cause}"));
            fitted = found;
        }
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}

using System.Globalization;
using Graspwright.Hand;
using Graspwright.Signals.Sites;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Signals;

/// <summary>Sites of a hand.</summary>
/// <param name="Answer">The answer; <see langword="null"/> if there is none.</param>
/// <param name="Errors">What is wrong with the input.</param>
/// <param name="Map">The map.</param>
/// <param name="Chosen">The best set, by place in the map.</param>
/// <param name="Windows">How far each of it may slip, by direction.</param>
public sealed record SitesResult(Answer? Answer, IReadOnlyList<InputError> Errors, SiteMap? Map, IReadOnlyList<int> Chosen, IReadOnlyList<IReadOnlyList<Slip>> Windows);

/// <summary>Where do the contacts go, and how far may each slip?</summary>
public static class SitesAnswer
{
    private const double LeastSlip = 5;

    /// <summary>Answers.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="handFile">Path of its file.</param>
    /// <param name="count">How many pairs; <see langword="null"/> = as many as the hand file has channels.</param>
    public static SitesResult Answer(HandModel hand, string handFile, int? count = null)
    {
        ArgumentNullException.ThrowIfNull(hand);
        List<InputError> errors = [];
        if (SiteMap.Read(hand, handFile, errors) is not { } map || errors.Count > 0)
        {
            return new(null, errors, null, [], []);
        }

        MuscleSignals plan = hand.Signals!;
        SiteLimits limits = new(count ?? Math.Max(1, plan.Channels.Count), 1e3 * plan.LeastSpacing, [.. plan.Sore.Select(s => new SorePlace(s.Name, 1e3 * s.Place.X, 1e3 * s.Place.Y, 1e3 * s.Radius))]);
        if (SiteSearch.Find(map.Sites, map.Readings, limits) is not { } best)
        {
            int allowed = map.Sites.Count(s => SiteSearch.Allowed(s, limits));
            errors.Add(new(handFile, 0, 0, "signals", $"no {limits.Count} of {map.Sites.Count} sites keep {limits.LeastDistanceMm:0.#} mm apart and off sore places ({allowed} are off them)", "enough sites", "Map more places, allow a smaller least_spacing, or ask for fewer with --count."));
            return new(null, errors, map, [], []);
        }

        Site[] chosen = [.. best.Sites.Select(i => map.Sites[i])];
        SiteReading[] readings = [.. best.Sites.Select(i => map.Readings[i])];
        bool field = map.Sites.Count >= 3;
        IReadOnlyList<IReadOnlyList<Slip>> windows = field ? Windows(new SiteField(map.Sites, map.Readings), chosen, readings, plan.SeparationLimit) : [];
        List<Figure> figures = [Separation(best, readings)];
        List<Finding> findings = [.. Findings(map, best, chosen, windows, plan, limits, figures), .. SignalWords.Locks(hand)];
        return new(new()
        {
            Verb = "sites",
            Hand = hand.Name,
            Sentence = Sentence(map, best, chosen, windows, plan),
            Figures = figures,
            Findings = findings,
            Tables = [Chosen(chosen, readings, map, windows), All(map, limits, best), .. field ? [Slips(chosen, windows)] : Array.Empty<Table>()],
            Cautions = SignalWords.Cautions,
        }, errors, map, best.Sites, windows);
    }

    private static IReadOnlyList<IReadOnlyList<Slip>> Windows(SiteField field, Site[] chosen, SiteReading[] readings, double limit) =>
        [.. Enumerable.Range(0, chosen.Length).Select(i => PlacementWindows.Of(field, chosen, readings, i, limit))];

    private static string Sentence(SiteMap map, SiteSet best, Site[] chosen, IReadOnlyList<IReadOnlyList<Slip>> windows, MuscleSignals plan)
    {
        string names = SignalWords.List([.. chosen.Select(s => s.Name)]);
        string apart = SignalWords.Number(best.Separation, "0.0");
        string first = $"Of {map.Sites.Count} mapped places {names} together keep the gestures farthest apart: the nearest two, {map.Gestures[best.First]} and {map.Gestures[best.Second]}, lie {apart} scatters apart (limit {SignalWords.Number(plan.SeparationLimit)}).";
        if (windows.Count == 0 || best.Separation < plan.SeparationLimit)
        {
            return first;
        }

        (Site Site, Slip Slip)[] ends = [.. chosen.SelectMany((s, i) => windows[i].Where(w => !w.EndsAtMap).Select(w => (s, w)))];
        if (ends.Length == 0)
        {
            return $"{first} Each may slip as far as the map goes.";
        }

        (Site site, Slip slip) = ends.MinBy(e => e.Slip.SlipMm);
        return $"{first} The choosiest is {site.Name}: {SignalWords.Number(slip.SlipMm, "0.#")} mm toward {Toward(slip.DirectionDegrees)}, then two gestures run together.";
    }

    private static string Toward(double degrees)
    {
        string[] words = ["right", "upper right", "up", "upper left", "left", "lower left", "down", "lower right"];
        return $"the {words[(int)Math.Round(degrees / 45) % 8]} of the pattern".Replace("the up of", "the top of", StringComparison.Ordinal).Replace("the down of", "the foot of", StringComparison.Ordinal);
    }

    /// <summary>Separation is the root of the sum of the squared distances at each site.</summary>
    private static Figure Separation(SiteSet best, SiteReading[] readings)
    {
        List<WorkingInput> inputs = [];
        for (int i = 0; i < readings.Length; i++)
        {
            inputs.Add(new(string.Create(CultureInfo.InvariantCulture, $"apart_at_{i + 1}"), Math.Sqrt(readings[i].Squared(best.First, best.Second)), ""));
        }

        return new("separation", "distance of the two nearest gestures, in scatters", "")
        {
            Value = best.Separation,
            Working = new($"sqrt({string.Join(" + ", inputs.Select(i => $"{i.Name}^2"))})", inputs, "fisher-1936"),
        };
    }

    private static IEnumerable<Finding> Findings(SiteMap map, SiteSet best, Site[] chosen, IReadOnlyList<IReadOnlyList<Slip>> windows, MuscleSignals plan, SiteLimits limits, List<Figure> figures)
    {
        yield return SignalWords.Judged("separation", $"{map.Gestures[best.First]}/{map.Gestures[best.Second]}", best.Separation, plan.SeparationLimit, most: false, "",
            $"The nearest two gestures, {map.Gestures[best.First]} and {map.Gestures[best.Second]}, lie {SignalWords.Number(best.Separation)} scatters apart with the best places there are.", "Map more places between these, space the contacts of a pair wider, or choose another gesture.");
        for (int i = 0; i < windows.Count; i++)
        {
            // What the map cuts off says less than a real end, unless there is none.
            Slip least = windows[i].Any(w => !w.EndsAtMap) ? windows[i].Where(w => !w.EndsAtMap).MinBy(w => w.SlipMm) : windows[i].MinBy(w => w.SlipMm);
            Slip edge = windows[i].MinBy(w => w.SlipMm);
            if (edge.EndsAtMap && edge.SlipMm < LeastSlip)
            {
                yield return new("placement_window", chosen[i].Name, Verdict.NotKnown,
                    $"{chosen[i].Name} lies at the edge of the map: toward {Toward(edge.DirectionDegrees)} nothing is known beyond {SignalWords.Number(edge.SlipMm, "0.#")} mm.", "Map a place farther out in that direction.");
            }

            figures.Add(new(SignalWords.Key("slip", chosen[i].Name), $"how far {chosen[i].Name} may slip in its worst direction", "mm")
            {
                Value = least.SlipMm,
                Working = new("least_of_directions", [new("least_of_directions", least.SlipMm, "mm")], "duchon-1977"),
            });
            yield return SignalWords.Judged("placement_window", chosen[i].Name, least.SlipMm, LeastSlip, most: false, "mm",
                $"{chosen[i].Name} may slip {(least.EndsAtMap ? "at least " : "")}{SignalWords.Number(least.SlipMm, "0.#")} mm toward {Toward(least.DirectionDegrees)}{(least.EndsAtMap ? ", as far as the map goes" : " before two gestures run together")}; liners slip by some {LeastSlip:0} mm (common practice, no source).",
                least.EndsAtMap ? "Map a place farther out in that direction." : "Mark the place on skin and liner, or fix the liner there.");
        }

        int tied = map.Sites.Count(s => !SiteSearch.Allowed(s, limits));
        if (tied > 0)
        {
            yield return new("sore_places", "skin map", Verdict.Good, $"{tied} {(tied == 1 ? "site was" : "sites were")} left out to keep off {SignalWords.List([.. plan.Sore.Select(s => s.Name)])}.", "Nothing need change.");
        }
    }

    private static Table Chosen(Site[] chosen, SiteReading[] readings, SiteMap map, IReadOnlyList<IReadOnlyList<Slip>> windows) => new("chosen sites",
        [new("site", ""), new("x", "mm"), new("y", "mm"), new("direction", "deg"), new("spacing", "mm"), new("strongest at", ""), new("may slip", "mm"), new("map ends first", "")],
        [.. chosen.Select((s, i) => (IReadOnlyList<Cell>)[s.Name, s.XMm, s.YMm, s.DirectionDegrees, s.SpacingMm, map.Gestures[Strongest(readings[i])],
            windows.Count > 0 ? windows[i].Where(w => !w.EndsAtMap).Select(w => w.SlipMm).DefaultIfEmpty(double.NaN).Min() : double.NaN, windows.Count > 0 ? Cut(windows[i]) : "–"])]);

    private static string Cut(IReadOnlyList<Slip> window) => string.Create(CultureInfo.InvariantCulture, $"{window.Count(w => w.EndsAtMap)} of {window.Count} ways");

    private static int Strongest(SiteReading reading) => Enumerable.Range(1, reading.Mean.Length - 1).MaxBy(g => reading.Mean[g]);

    private static Table All(SiteMap map, SiteLimits limits, SiteSet best) => new("all sites",
        [new("site", ""), new("x", "mm"), new("y", "mm"), new("taken", ""), .. map.Gestures.Skip(1).Select(g => new Column($"{g} over rest", "scatters"))],
        [.. map.Sites.Select((s, i) => (IReadOnlyList<Cell>)[s.Name, s.XMm, s.YMm, best.Sites.Contains(i) ? "yes" : SiteSearch.Allowed(s, limits) ? "no" : "sore",
            .. Enumerable.Range(1, map.Gestures.Count - 1).Select(g => (Cell)((map.Readings[i].Mean[g] - map.Readings[i].Mean[0]) / map.Readings[i].Deviation))])]);

    private static Table Slips(Site[] chosen, IReadOnlyList<IReadOnlyList<Slip>> windows) => new("placement windows",
        [new("direction", "deg"), .. chosen.Select(s => new Column(s.Name, "mm"))],
        [.. Enumerable.Range(0, windows[0].Count).Where(d => d % 3 == 0).Select(d => (IReadOnlyList<Cell>)[windows[0][d].DirectionDegrees, .. windows.Select(w => (Cell)w[d].SlipMm)])]);
}

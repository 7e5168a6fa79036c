using System.Globalization;
using Graspwright.Deciding.Fronts;
using Graspwright.Deciding.Search;
using Graspwright.Hand;
using Graspwright.Workshop.Changes;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Search;

/// <summary>Says what a search found.</summary>
internal static class SearchAnswer
{
    private const int MostRows = 16;
    private const double Acts = 0.02; // share of a limit, or of a range, within which it acts: chosen by us

    public static Answer Of(HandModel hand, SearchStudy study) => Of(hand, study, study.Front.Count > 0 ? SmallSteps.Of(study) : []);

    private static Answer Of(HandModel hand, SearchStudy study, IReadOnlyList<SmallStep> steps) => new()
    {
        Verb = "search",
        Hand = hand.Name,
        Sentence = study.Front.Count > 0 ? Found(study) : NothingFound(study),
        Situation = study.Search.Name,
        Figures = study.Front.Count > 0 ? Figures(study) : [],
        Findings = [.. study.Front.Count > 0 ? Reasons(study) : Relaxed(study), .. SmallSteps.Edges(study, steps), .. Counted(study)],
        Tables = study.Front.Count > 0 ? [Edits(study), .. Polished(study), FrontTable(study, All: false), SmallSteps.Table(study, steps)] : [Nearest(study)],
        Cautions =
        [
            "Every design is computed, none is built: mock it up, then prove it on a bench, before metal is cut and before it is worn.",
            "A search finds good designs, not the best there is; another seed may find slightly better ones.",
        ],
    };

    /// <summary>The whole front as a table; without <paramref name="All"/> thinned to what a page holds.</summary>
    public static Table FrontTable(SearchStudy study, bool All)
    {
        SearchMeasures m = study.Measures;
        IReadOnlyList<string> names = study.Variants.Names, units = study.Variants.Units;
        List<Column> columns = [new("point", ""), .. m.Aims.Select(a => new Column(a.Measure.Text, a.Measure.Unit)), .. m.Limits.Select(l => new Column(l.Measure.Text, l.Measure.Unit)), .. names.Select((n, i) => new Column(n, units[i]))];
        int[] rows = [.. Enumerable.Range(0, study.Front.Count)];
        if (!All && rows.Length > MostRows)
        {
            HashSet<int> keep = [0, rows.Length - 1, study.Chosen];
            foreach (int i in Thinning.Keep([.. study.Front.Select(d => d.Outcome.Aims)], MostRows - 3))
            {
                keep.Add(i);
            }

            rows = [.. keep.Order()];
        }

        List<IReadOnlyList<Cell>> cells = [];
        if (study.AsItIs is { } plain)
        {
            cells.Add(Row("as it is", study, plain));
        }

        cells.AddRange(rows.Select(i => Row(string.Create(CultureInfo.InvariantCulture, $"{i + 1}{(i == study.Chosen ? " ←" : "")}"), study, study.Front[i])));
        return new("front", columns, cells);
    }

    private static IReadOnlyList<Cell> Row(string name, SearchStudy study, Design design)
    {
        IReadOnlyList<string> texts = study.Variants.Texts(design.Values), units = study.Variants.Units;
        return
        [
            name,
            .. study.Measures.Aims.Select((a, k) => (Cell)AimValue(study, design, k)),
            .. study.Measures.Limits.Select((l, k) => (Cell)l.From(design.Outcome.Excess[k])),
            .. texts.Select((t, i) => units[i].Length > 0 || (study.Variants.Space.Parameters[i] is { Unordered: false } && double.TryParse(t, CultureInfo.InvariantCulture, out _)) ? (Cell)design.Values[i] : (Cell)t),
        ];
    }

    /// <summary>Value of an aim in the measure's own unit.</summary>
    public static double AimValue(SearchStudy study, Design design, int aim) => study.Measures.Aims[aim].More ? -design.Outcome.Aims[aim] : design.Outcome.Aims[aim];

    private static string Found(SearchStudy study)
    {
        Design chosen = study.Front[study.Chosen];
        IEnumerable<string> aims = study.Measures.Aims.Select((a, k) =>
            $"{a.Measure.Words}{ChangesAnswer.Where(a.Measure.Text)} {ChangesAnswer.Short(AimValue(study, chosen, k), a.Measure.Unit)}{Was(study, k)}");
        string count = study.Front.Count == 1 ? "one is better than all others" : string.Create(CultureInfo.InvariantCulture, $"{study.Front.Count} are worth a choice: none of them is beaten in everything by another");
        List<string> acting = Acting(study, chosen);
        string why = acting.Count > 0 ? $" What stops it there: {string.Join("; ", acting)}." : study.Front.Count > 1 ? " No limit acts there: it lies where giving up more of one aim stops buying much of the other." : "";
        string stopped = study.Ended ? "" : " It was stopped before its end.";
        return string.Create(CultureInfo.InvariantCulture, $"Of {study.State.Judged} designs, {count}. Try number {study.Chosen + 1} first: {string.Join("; ", aims)}.{why}{stopped}");
    }

    private static string Was(SearchStudy study, int aim) => study.AsItIs is { } plain && plain.Outcome.Excess[^1] == 0
        ? $" (as it is: {ChangesAnswer.Short(AimValue(study, plain, aim), study.Measures.Aims[aim].Measure.Unit)})"
        : "";

    private static string NothingFound(SearchStudy study)
    {
        if (study.State.LeastBeyond is not { } least)
        {
            return string.Create(CultureInfo.InvariantCulture, $"None of {study.State.Judged} designs can be put together or judged: the ranges leave no hand that works.");
        }

        string[] broken = [.. study.Measures.Limits.Select((l, k) => (l, k)).Where(x => least.Outcome.Excess[x.k] > 0).Select(x => $"{LimitWords(x.l)} would have to become {ChangesAnswer.Short(x.l.From(least.Outcome.Excess[x.k]), x.l.Measure.Unit)}")];
        string missing = least.Outcome.Excess[^1] > 0 ? string.Create(CultureInfo.InvariantCulture, $"{least.Outcome.Excess[^1]:0} of the measures have no value in it") : "";
        string all = string.Join(" and ", broken.Append(missing).Where(w => w.Length > 0));
        return string.Create(CultureInfo.InvariantCulture, $"None of {study.State.Judged} designs keeps every limit. The nearest breaks as little as can be: {all}.");
    }

    /// <summary>A limit in words.</summary>
    private static string LimitWords(AskedLimit limit) =>
        $"the limit of {(limit.AtLeast ? "at least" : "at most")} {ChangesAnswer.Short(limit.Value, limit.Measure.Unit)} on {limit.Measure.Words}{ChangesAnswer.Where(limit.Measure.Text)}";

    private static List<string> Acting(SearchStudy study, Design design)
    {
        List<string> acting = [.. study.Measures.Limits.Select((l, k) => (l, k)).Where(x => design.Outcome.Excess[x.k] > -Acts).Select(x => LimitWords(x.l))];
        for (int i = 0; i < design.Values.Length; i++)
        {
            FreeParameter p = study.Variants.Space.Parameters[i];
            double near = Acts * (p.High - p.Low);
            if (!p.Unordered && p.Count > 2 && (design.Values[i] <= p.Low + near || design.Values[i] >= p.High - near))
            {
                acting.Add($"the {(design.Values[i] <= p.Low + near ? "lower" : "upper")} end of the range of {study.Variants.Names[i]}");
            }
        }

        return acting;
    }

    private static List<Figure> Figures(SearchStudy study)
    {
        AskedHand hand = new(study.Variants.Hand(study.Front[study.Chosen].Values));
        return [.. study.Measures.Aims.Select(a => a.Measure).Concat(study.Measures.Limits.Select(l => l.Measure)).DistinctBy(m => m.Text).Select(m => m.Figure(hand))];
    }

    private static IEnumerable<Finding> Reasons(SearchStudy study)
    {
        Design chosen = study.Front[study.Chosen];
        for (int k = 0; k < study.Measures.Limits.Count; k++)
        {
            AskedLimit limit = study.Measures.Limits[k];
            double margin = -chosen.Outcome.Excess[k], value = limit.From(chosen.Outcome.Excess[k]);
            bool acts = margin < Acts;
            if (margin >= Verdicts.GoodMargin)
            {
                continue;
            }

            yield return new(acts ? "limit_acts" : "limit_kept", limit.Measure.Text, Verdicts.Of(margin),
                $"{ChangesAnswer.Short(value, limit.Measure.Unit)} against {LimitWords(limit)}: {(acts ? "this limit acts" : "kept, with little to spare")}.",
                acts ? "Relax it a little and search again to see what it costs." : "Nothing.")
            {
                Figure = value,
                Limit = limit.Value,
                Unit = limit.Measure.Unit,
                Margin = margin,
            };
        }
    }

    private static IEnumerable<Finding> Relaxed(SearchStudy study)
    {
        if (study.State.LeastBeyond is not { } least)
        {
            yield break;
        }

        for (int k = 0; k < study.Measures.Limits.Count; k++)
        {
            AskedLimit limit = study.Measures.Limits[k];
            int at = k;
            Design? alone = study.State.Population.Append(least).Where(d => d.Outcome is { Failed: false } o && o.Excess[at] > 0 && Enumerable.Range(0, o.Excess.Length).All(i => i == at || o.Excess[i] <= 0)).MinBy(d => d.Outcome.Excess[at]);
            if (alone is not null)
            {
                double value = limit.From(alone.Outcome.Excess[k]);
                yield return new("relax_limit", limit.Measure.Text, Verdict.Fails, $"With {LimitWords(limit)} alone relaxed to {ChangesAnswer.Short(value, limit.Measure.Unit)}, a design keeps all the others.", "Relax this limit, or widen the ranges.")
                {
                    Figure = value,
                    Limit = limit.Value,
                    Unit = limit.Measure.Unit,
                    Margin = -alone.Outcome.Excess[k],
                };
            }
        }
    }

    private static IEnumerable<Finding> Counted(SearchStudy study)
    {
        SearchState s = study.State;
        if (s.Failed > 0)
        {
            yield return new("designs_failed", study.Search.Name, Verdict.NotKnown, string.Create(CultureInfo.InvariantCulture, $"{s.Failed} of {s.Judged} designs could not be put together, or had an object in the open fingers already; they count as failed."), "Narrow the ranges if it is most of them.") { Figure = s.Failed };
        }

        if (s.Inside < s.Judged - s.Failed)
        {
            yield return new("designs_beyond", study.Search.Name, Verdict.Tight, string.Create(CultureInfo.InvariantCulture, $"{s.Inside} of {s.Judged} designs kept every limit and could be measured in everything asked for."), "Nothing.") { Figure = s.Inside };
        }

        if (study.Polished is not null && study.Differenced.Count > 0)
        {
            yield return new("slopes_differenced", study.Search.Name, Verdict.Tight, $"While polishing, these went by differences of whole runs: {string.Join("; ", study.Differenced.Select(d => $"{d.Key}, as {d.Value}"))}.", "Nothing.");
        }

        if (study.Variants.ThroughTheFile)
        {
            yield return new("search_through_file", study.Search.Name, Verdict.Tight, "What is free sets values of the hand in a way that has to go through the file for every design, so the search is slow.", "Leave out of the search what other values are worked out from.");
        }
    }

    private static Table Edits(SearchStudy study)
    {
        IReadOnlyList<string> names = study.Variants.Names, chosen = study.Variants.Texts(study.Front[study.Chosen].Values), plain = study.Variants.Texts(study.Variants.AsItIs);
        return new("the design to try first", [new("path", ""), new("as it is", ""), new("new", "")], [.. names.Select((n, i) => (IReadOnlyList<Cell>)[n, plain[i], chosen[i]])]);
    }

    private static IEnumerable<Table> Polished(SearchStudy study)
    {
        if (study.Polished is not { } polished)
        {
            yield break;
        }

        IReadOnlyList<string> names = study.Variants.Names, before = study.Variants.Texts(study.Front[study.Chosen].Values), after = study.Variants.Texts(polished.Values);
        IReadOnlyList<Cell> Aim(AskedAim a, int k) => [a.Measure.Text, ChangesAnswer.Short(AimValue(study, study.Front[study.Chosen], k), a.Measure.Unit), ChangesAnswer.Short(AimValue(study, polished, k), a.Measure.Unit)];
        yield return new("the same, polished", [new("what", ""), new("found", ""), new("polished", "")], [.. study.Measures.Aims.Select(Aim), .. names.Select((n, i) => (IReadOnlyList<Cell>)[n, before[i], after[i]])]);
    }

    private static Table Nearest(SearchStudy study)
    {
        IReadOnlyList<string> names = study.Variants.Names;
        IReadOnlyList<string> plain = study.Variants.Texts(study.Variants.AsItIs), least = study.State.LeastBeyond is { } d ? study.Variants.Texts(d.Values) : plain;
        return new("the design nearest to the limits", [new("path", ""), new("as it is", ""), new("nearest", "")], [.. names.Select((n, i) => (IReadOnlyList<Cell>)[n, plain[i], least[i]])]);
    }
}

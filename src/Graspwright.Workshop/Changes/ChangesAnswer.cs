using System.Globalization;
using Graspwright.Deciding.Changes;
using Graspwright.Hand;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Variants;

namespace Graspwright.Workshop.Changes;

/// <summary>Says what a list of changes buys.</summary>
internal static class ChangesAnswer
{
    private const int MostNamed = 3;
    private const double SecondsADay = 86400, PairShare = 0.1, HarmShare = 0.05; // of all that the changes do to a measure: chosen by us

    public static Answer Of(HandModel hand, ChangeStudy study, ChangeVariants variants) => new()
    {
        Verb = "changes",
        Hand = hand.Name,
        Sentence = Sentence(study),
        Figures = [.. study.Measures.SelectMany(m => Figures(study, m))],
        Findings = [.. Findings(study, variants)],
        Tables = [Items(study, hand.Decisions.Money), StepTable(study),
            Gains(study, "gain alone", (m, i) => m.Effects.Alone[i]), Gains(study, "gain on top of the others", (m, i) => m.Effects.InCompany[i]),
            Gains(study, "gain alone per evening", (m, i) => study.Items[i].Evenings is > 0 and var e ? m.Effects.Alone[i] / e : null), Pairs(study)],
        Cautions =
        [
            "Every figure is computed; a change is proved on a bench before it is cut in metal, and on a bench before it is worn.",
            "Evenings, money and days are the maker's own estimates.",
            "Differences of less than half a hundredth of the greatest value count as none; pairs are told where they are a tenth of all that the changes do.",
        ],
    };

    /// <summary>A value with its unit, short.</summary>
    public static string Short(double value, string unit)
    {
        string number = double.IsNaN(value) ? "?" : Math.Abs(value) switch
        {
            >= 100 => value.ToString("0", CultureInfo.InvariantCulture),
            >= 10 => value.ToString("0.#", CultureInfo.InvariantCulture),
            _ => value.ToString("0.##", CultureInfo.InvariantCulture),
        };
        return unit.Length > 0 ? $"{number} {unit}" : number;
    }

    private static string Signed(double value, string unit) => value > 0 ? "+" + Short(value, unit) : Short(value, unit);

    private static string Sentence(ChangeStudy study)
    {
        MeasuredChanges first = study.Measures[0];
        ChangeEffects effects = first.Effects;
        string unit = first.Measure.Unit;
        int[] helpful = [.. study.Steps.Skip(1).Select(s => s.Item).Where(i => effects.Alone[i] > first.Small)];
        string lead = helpful.Length == 0
            ? $"None of the {study.Items.Count} changes does anything for {Named(first)} alone"
            : $"For {Named(first)}, ‘{study.Items[helpful[0]].Name}’ buys most for its evenings: from {Short(first.Sense * effects.AsItIs, unit)} to {Short(first.Sense * (effects.AsItIs + effects.Alone[helpful[0]]), unit)}{Evenings(study.Items[helpful[0]])}";
        string all = double.IsNaN(effects.All) ? "; all together cannot be judged" : $"; all {study.Items.Count} together give {Short(first.Sense * effects.All, unit)}";
        string fight = PairWords(study, Together.Fight) is { } f ? $" {f} fight each other." : "";
        string only = PairWords(study, Together.HelpOnlyTogether) is { } o ? $" {o} help only together." : "";
        int[] idle = [.. Enumerable.Range(0, study.Items.Count).Where(i => study.Measures.All(m => !(Math.Abs(m.Effects.Alone[i]) > m.Small) && !(Math.Abs(m.Effects.InCompany[i]) > m.Small)))];
        string nothing = idle.Length > 0 && helpful.Length > 0 ? $" {List(idle.Select(i => $"‘{study.Items[i].Name}’"))} {(idle.Length == 1 ? "changes" : "change")} none of the measures asked for." : "";
        return $"{lead}{all}.{fight}{only}{nothing}";
    }

    private static string Named(MeasuredChanges m) => $"{m.Measure.Words}{Where(m.Measure.Text)}";

    /// <summary>Where a measure was asked for, in words.</summary>
    public static string Where(string text)
    {
        int at = text.IndexOf('@', StringComparison.Ordinal);
        return at < 0 ? "" : $" ({text[(at + 1)..].Replace("/all free", "", StringComparison.Ordinal)})";
    }

    private static string Evenings(Change change) => change.Evenings is { } e
        ? string.Create(CultureInfo.InvariantCulture, $" for {e:0.#} {(e == 1 ? "evening" : "evenings")}")
        : "";

    private static string? PairWords(ChangeStudy study, Together how)
    {
        PairEffect[] pairs = [.. study.Measures.SelectMany(m => m.Effects.Pairs.Where(p => p.How == how && Telling(study, m, p.Beyond, PairShare)).Select(p => (Pair: p, Size: Math.Abs(p.Beyond) / Span(study, m))))
            .OrderByDescending(p => p.Size).Select(p => p.Pair).DistinctBy(p => (p.First, p.Second)).Take(MostNamed)];
        return pairs.Length == 0 ? null : List(pairs.Select(p => $"‘{study.Items[p.First].Name}’ and ‘{study.Items[p.Second].Name}’"), "; ");
    }

    private static string List(IEnumerable<string> names, string between = ", ")
    {
        string[] all = [.. names];
        return all.Length < 2 ? string.Concat(all) : $"{string.Join(between, all[..^1])}{(between == ", " ? " and " : "; ")}{all[^1]}";
    }

    private static IEnumerable<Figure> Figures(ChangeStudy study, MeasuredChanges m)
    {
        int k = study.Measures.ToList().IndexOf(m);
        double before = study.Value(ChangeSet.None, k), after = study.Value(ChangeSet.Whole(study.Items.Count), k);
        Figure figure = new($"gain_of_all/{m.Measure.Text}", $"gain of all changes: {m.Measure.Words}", m.Measure.Unit);
        if (double.IsNaN(before + after))
        {
            yield return figure with { Why = "the hand as it is, or with all changes, has no value" };
            yield break;
        }

        Terms terms = new();
        string a = terms.Input("with_all_changes", after, m.Measure.Unit), b = terms.Input("as_it_is", before, m.Measure.Unit);
        yield return figure with { Value = after - before, Working = terms.Working($"{a} - {b}", "change-arithmetic") };
    }

    private static IEnumerable<Finding> Findings(ChangeStudy study, ChangeVariants variants)
    {
        foreach (MeasuredChanges m in study.Measures)
        {
            foreach (PairEffect pair in m.Effects.Pairs.Where(p => p.How is Together.Fight or Together.HelpOnlyTogether && Telling(study, m, p.Beyond, PairShare)).OrderByDescending(p => Math.Abs(p.Beyond)).Take(MostNamed))
            {
                bool fight = pair.How == Together.Fight;
                (Change one, Change other) = (study.Items[pair.First], study.Items[pair.Second]);
                (Change better, Change worse) = pair.FirstAlone >= pair.SecondAlone ? (one, other) : (other, one);
                string gains = $"{Signed(m.Sense * pair.FirstAlone, m.Measure.Unit)} and {Signed(m.Sense * pair.SecondAlone, m.Measure.Unit)} alone, {Signed(m.Sense * pair.Both, m.Measure.Unit)} together";
                yield return new(
                    fight ? "changes_fight" : "changes_help_together", $"{one.Name} + {other.Name}", fight ? Verdict.Fails : Verdict.Good,
                    $"‘{one.Name}’ and ‘{other.Name}’ {(fight ? "fight" : "help only together")} over {Named(m)}: {gains}.",
                    fight ? $"Make ‘{better.Name}’ and leave ‘{worse.Name}’ out." : "Make both or neither.")
                { Figure = m.Sense * pair.Both, Unit = m.Measure.Unit };
            }

            foreach (int i in Enumerable.Range(0, study.Items.Count).Where(i => m.Effects.Alone[i] < -m.Small && m.Effects.InCompany[i] < -m.Small && Telling(study, m, m.Effects.Alone[i], HarmShare)))
            {
                yield return new("change_harms", study.Items[i].Name, Verdict.Tight, $"‘{study.Items[i].Name}’ harms {Named(m)}: {Signed(m.Sense * m.Effects.Alone[i], m.Measure.Unit)} alone, {Signed(m.Sense * m.Effects.InCompany[i], m.Measure.Unit)} on top of all the others.", "Weigh it against what else it buys.")
                {
                    Figure = m.Sense * m.Effects.Alone[i],
                    Unit = m.Measure.Unit,
                };
            }
        }

        foreach ((Change earlier, Change later) in variants.SameValues())
        {
            yield return new("changes_meet", $"{earlier.Name} + {later.Name}", Verdict.Tight, $"‘{earlier.Name}’ and ‘{later.Name}’ set the same value; where both are made, the later in the list wins.", "Read the pair as one or the other, not as both.");
        }

        foreach (IGrouping<string, (ChangeSet Set, string Why)> failed in study.Failed.GroupBy(f => f.Why))
        {
            (ChangeSet fewest, _) = failed.MinBy(f => System.Numerics.BitOperations.PopCount(f.Set.Bits));
            string with = ChangeStudies.Names(study.Items, fewest), more = failed.Count() > 1 ? string.Create(CultureInfo.InvariantCulture, $", and in {failed.Count() - 1} more sets") : "";
            yield return new("change_not_judged", with, Verdict.NotKnown, $"With ‘{with}’{more}: {failed.Key}.", "Weigh it by another measure, or change the item.");
        }
    }

    private static Table Items(ChangeStudy study, string money) => new("changes",
        [new("change", ""), new("what", ""), new("evenings", ""), new("money", money), new("days without", "days"), new("fits", ""), new("try first", "")],
        [.. study.Items.Select(c => (IReadOnlyList<Cell>)[c.Name, c.About, c.Evenings, c.Money, c.WithoutSeconds / SecondsADay, c.NewHand ? "new hand" : "retrofit", c.MockUp])]);

    private static Table Gains(ChangeStudy study, string name, Func<MeasuredChanges, int, double?> gain) => new(name,
        [new("change", ""), .. study.Measures.Select(m => new Column(m.Measure.Text, m.Measure.Unit))],
        [.. study.Items.Select((c, i) => (IReadOnlyList<Cell>)[c.Name, .. study.Measures.Select(m => (Cell)(m.Sense * gain(m, i)))])]);

    private static Table StepTable(ChangeStudy study) => new("steps",
        [new("step", ""), .. study.Measures.Select(m => new Column(m.Measure.Text, m.Measure.Unit))],
        [.. study.Steps.Select(s => (IReadOnlyList<Cell>)[s.Item < 0 ? "as it is" : "+ " + study.Items[s.Item].Name, .. Enumerable.Range(0, study.Measures.Count).Select(k => (Cell)study.Value(s.Set, k))])]);

    private static Table Pairs(ChangeStudy study) => new("pairs that do not just add",
        [new("one", ""), new("other", ""), new("measure", ""), new("unit", ""), new("one alone", ""), new("other alone", ""), new("both", ""), new("so they", "")],
        [.. study.Measures.SelectMany(m => m.Effects.Pairs.Where(p => p.How is not (Together.Add or Together.NotKnown)).OrderByDescending(p => Math.Abs(p.Beyond))
            .Select(p => (IReadOnlyList<Cell>)[study.Items[p.First].Name, study.Items[p.Second].Name, m.Measure.Text, m.Measure.Unit, m.Sense * p.FirstAlone, m.Sense * p.SecondAlone, m.Sense * p.Both, Word(p.How)]))]);

    /// <summary>Whether a difference is worth a sentence: beside all that the changes do to the measure.</summary>
    private static bool Telling(ChangeStudy study, MeasuredChanges m, double difference, double share) => Math.Abs(difference) >= share * Span(study, m);

    private static double Span(ChangeStudy study, MeasuredChanges m)
    {
        int k = study.Measures.ToList().IndexOf(m);
        double[] all = [.. study.Values.Values.Select(v => v[k]).Where(double.IsFinite)];
        return all.Length == 0 ? 1 : Math.Max(all.Max() - all.Min(), 1e-300);
    }

    private static string Word(Together how) => how switch
    {
        Together.HelpOnlyTogether => "help only together",
        Together.Strengthen => "strengthen each other",
        Together.Fight => "fight",
        _ => "overlap",
    };
}

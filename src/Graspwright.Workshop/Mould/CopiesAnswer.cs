using Graspwright.Hand;
using Graspwright.Moulding.Copies;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;
using static Graspwright.Workshop.Mould.MouldWords;

namespace Graspwright.Workshop.Mould;

/// <summary>The chain of copies from the limb to the shell: materials, waiting, and the millimetres each adds or takes.</summary>
public static class CopiesAnswer
{
    /// <summary>Answers.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="file">Name of its file, for errors.</param>
    /// <returns>The answer, or what is missing for it.</returns>
    public static (Answer? Answer, IReadOnlyList<InputError> Errors) Of(HandModel hand, string file)
    {
        ArgumentNullException.ThrowIfNull(hand);
        if (MouldMapping.Missing(hand, file, liner: true, form: true, copies: true) is { Count: > 0 } missing)
        {
            return (null, missing);
        }

        CopySums sums = CopySums.Of(hand);
        double off = 1000 * sums.TakeOff, spread = 1000 * sums.TakeOffSpread, gap = 1000 * sums.Gap;
        string plaster = off >= 0 ? $"Take {Number(off, 2)} mm off the plaster all round" : $"Build the plaster up by {Number(-off, 2)} mm all round";
        string wax = Math.Abs(gap - 1000 * hand.Copies!.Gap) < 0.1 ? "the shell then clears the liner as wanted" : gap < 0 ? $"the shell would press {Number(-gap)} mm into the liner" : $"the shell then clears the liner by {Number(gap)} mm, {Number(1000 * hand.Copies.Gap)} mm is wanted";
        return (new()
        {
            Verb = "copies",
            Hand = hand.Name,
            Sentence = $"{plaster} (give or take {Number(spread, 2)} mm) so that the liner's inside comes out {Number(100 * hand.Copies.Snug)} % smaller than the limb; {wax}.",
            Figures = Figures(hand, sums),
            Findings = [.. Findings(hand, sums)],
            Tables = [Chain(sums), Materials(sums), Steps(), FitRecord(hand)],
            Cautions = MouldCautions.Copies,
        }, []);
    }

    private static List<Figure> Figures(HandModel hand, CopySums s)
    {
        CopyPlan plan = hand.Copies!;
        List<Figure> figures = [];
        Terms off = new();
        string text = $"({off.Input("liner_inside", 1000 * s.LinerInside, "mm")} - {off.Input("limb", 1000 * s.Girth, "mm")}·(1 - {off.Input("snug", plan.Snug, "")}))/(2·π)";
        figures.Add(new("take_off", "to take off the plaster all round, at the widest mark", "mm") { Value = 1000 * s.TakeOff, Low = 1000 * (s.TakeOff - s.TakeOffSpread), High = 1000 * (s.TakeOff + s.TakeOffSpread), Working = off.Working(text, MouldingSources.Geometry) });
        Terms gap = new();
        string clear = $"({gap.Input("shell_inside", 1000 * s.ShellInside, "mm")} - {gap.Input("liner_outside", 1000 * s.LinerOutside, "mm")})/(2·π)";
        figures.Add(new("shell_gap", "gap between liner and shell", "mm") { Value = 1000 * s.Gap, Low = 1000 * (s.Gap - s.GapSpread), High = 1000 * (s.Gap + s.GapSpread), Working = gap.Working(clear, MouldingSources.Geometry) });
        foreach ((string key, string words, double volume, PlasterMix mix) in s.Plasters)
        {
            Terms powder = new();
            string p = $"{powder.Input("volume", 1e6 * volume, "cm³")}/(1/{powder.Input("grains", PlasterMix.GrainDensity / 1000, "g/cm³")} + {powder.Input("water_for_powder", plan.WaterForPowder, "")}/{powder.Input("water", PlasterMix.WaterDensity / 1000, "g/cm³")})";
            figures.Add(new($"powder_{key}", $"powder for the {words}", "g") { Value = 1000 * mix.Powder, Working = powder.Working(p, "plaster-chemistry") });
            Terms water = new();
            figures.Add(new($"water_{key}", $"water for the {words}", "g") { Value = 1000 * mix.Water, Working = water.Working($"{water.Input("powder", 1000 * mix.Powder, "g")}·{water.Input("water_for_powder", plan.WaterForPowder, "")}", MouldingSources.Geometry) });
        }

        Terms heat = new();
        string rise = $"{heat.Input("mixing_water", plan.Water - Zero, "°C")} + {heat.Input("heat_of_setting", PlasterMix.HeatOfSetting / 1000, "J/g")}/({heat.Input("gypsum_for_powder", 172.17 / 145.15, "")}·{heat.Input("gypsum_heat", 1.09, "J/(g·K)")} + ({heat.Input("water_for_powder", plan.WaterForPowder, "")} - (gypsum_for_powder - 1))·{heat.Input("water_heat", 4.186, "J/(g·K)")})";
        figures.Add(new("plaster_heat", "temperature that thick plaster can reach", "°C") { Value = plan.Water - Zero + s.Plasters[0].Mix.GreatestRise, Working = heat.Working(rise, "plaster-chemistry") });
        return figures;
    }

    private static IEnumerable<Finding> Findings(HandModel hand, CopySums s)
    {
        double hot = hand.Copies!.Water - Zero + s.Plasters[0].Mix.GreatestRise;
        yield return new("plaster_heat", "plaster", hot >= 43 ? Verdict.Fails : Verdict.Good, $"In bulk this plaster can reach {Number(hot, 0)} °C; skin burns from about 43 °C when it is held there (from memory).",
            "On skin use bandage in thin layers over a barrier, water below 24 °C, nothing wrapped round it, a helper; bulk plaster goes only into the negative, never round a limb.")
        { Figure = hot, Limit = 43, Unit = "°C" };
        double spread = s.TakeOffSpread, worth = 1000 * spread;
        yield return new("fit", "liner", worth <= 0.5 ? Verdict.Good : Verdict.Tight, $"The copies leave the liner's fit uncertain by {Number(worth, 2)} mm all round.", "Measure the plaster's girths with the same tape before you rasp: that takes the first two copies out of the sum.") { Figure = worth, Limit = 0.5, Unit = "mm" };
        if (s.Gap < s.GapSpread)
        {
            yield return new("gap", "shell", s.Gap < 0 ? Verdict.Fails : Verdict.Tight, $"The shell clears the liner by {Number(1000 * s.Gap, 2)} mm, give or take {Number(1000 * s.GapSpread, 2)} mm.", $"Make the wax {Number(1000 * (hand.Copies.Wax + hand.Copies.Gap - s.Gap), 1)} mm thick.") { Figure = 1000 * s.Gap, Limit = 1000 * hand.Copies.Gap, Unit = "mm" };
        }
    }

    private static Table Chain(CopySums s) => new("chain of copies, at the widest mark", [new("copy", ""), new("girth", "mm"), new("coat", "mm"), new("growth", "mm"), new("give or take", "mm")],
        [["limb", 1000 * s.Girth, 0, 0, 0], .. s.Chain.Select(c => (IReadOnlyList<Cell>)[c.Name, 1000 * c.Girth, 1000 * c.FromCoat, 1000 * c.FromChange, 1000 * c.Spread])]);

    private static Table Materials(CopySums s) => new("materials and waiting", [new("copy", ""), new("volume", "ml"), new("powder", "g"), new("water", "g"), new("wait (common practice, no source)", ""), new("seal and release", ""), new("helper", "")],
    [
        ["negative off the limb", 1e6 * s.Plasters[0].Volume, 1000 * s.Plasters[0].Mix.Powder, 1000 * s.Plasters[0].Mix.Water, "off when firm, 10 min; dry overnight", "skin: stocking or barrier film, hair greased", "yes"],
        ["plaster", 1e6 * s.Plasters[1].Volume, 1000 * s.Plasters[1].Mix.Powder, 1000 * s.Plasters[1].Mix.Water, "open after 45 min, dry 2 days below 45 °C", "negative: soap film or thin petroleum jelly", ""],
        ["liner", 1e6 * s.LinerVolume, default, default, "as the clock says", "plaster dry, two coats of clear acrylic lacquer, petroleum jelly rubbed to a haze; test patch", ""],
        ["wax", 1e6 * s.WaxVolume, default, default, "1 h to room temperature", "none: wax lets go of cured silicone", ""],
        ["plaster over the wax", 1e6 * s.Plasters[2].Volume, 1000 * s.Plasters[2].Mix.Powder, 1000 * s.Plasters[2].Mix.Water, "45 min, parted in halves", "thin soap film on the wax", "yes, to turn and part it"],
        ["shell", 1e6 * s.ShellVolume, default, default, "as the resin's sheet says; cure it fully before silicone comes near", "polyvinyl alcohol film on the sealed plaster", "for laying up one-handed"],
    ]);

    private static Table Steps() => new("in order", [new("step", "")],
    [
        ["Helper: barrier on the skin, marks drawn through it, thin bandage in halves, cool water. Scissors and a strip under the line of the cut before you start."],
        ["Negative closed, sealed, released; plaster poured slowly down one side, a wire or pipe set in for a handle."],
        ["Plaster measured at the same marks as the limb; rasp or build up by the figure above; dry through; seal; test a patch of putty on it."],
        ["Liner after the card and the clock; left on the plaster as long as it can be."],
        ["Wax over the liner, then plaster over the wax in two halves, parted where the shell will be."],
        ["Wax out, shell laid up in the halves, cured fully, trimmed; liner in; fit record."],
    ]);

    /// <summary>The fit record: what to write down on the first days.</summary>
    /// <param name="hand">The hand.</param>
    public static Table FitRecord(HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(hand);
        return new("fit record, to fill in", [new("mark", ""), new("limb, morning", "mm"), new("limb, evening", "mm"), new("plaster", "mm"), new("liner inside", "mm"), new("red after 30 min?", ""), new("what was changed", "")],
            [.. hand.Form!.Marks.Select(m => (IReadOnlyList<Cell>)[m.Name, default, default, default, default, "", ""])]);
    }
}

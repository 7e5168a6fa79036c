using Graspwright.Hand;
using Graspwright.Moulding.ComingOff;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;
using static Graspwright.Workshop.Mould.MouldWords;

namespace Graspwright.Workshop.Mould;

/// <summary>Does a cut tear on, how big is the hole at its end, and how far must it run for a hole of a sensible size?</summary>
internal static class TearFindings
{
    private const double LeastHole = 0.004; // a leather punch; smaller ones leave a ragged edge (common practice, no source)
    private const double MostHole = 0.010;  // a bigger one gapes (chosen)
    private const double BreakShare = 0.5;  // share of the energy to break that the edge of the hole is allowed (chosen)

    /// <summary>The stretch that may be left at the end of a cut so that a hole of sensible size holds; without bound where the label does not tell.</summary>
    /// <param name="putty">The label.</param>
    /// <param name="girth">Girth of the liner where it is widest, unstretched [m].</param>
    public static double LeftAtEnd(PuttyLabel putty, double girth)
    {
        if (putty is not { ShoreA: { } shore, Elongation: { } elongation })
        {
            return double.PositiveInfinity;
        }

        double modulus = Silicone.Modulus(shore), budget = MostHole * BreakShare * Silicone.Stored(modulus, elongation), low = 0, high = elongation;
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = Silicone.LongCutEnergy(modulus, middle, girth) > budget ? (low, middle) : (middle, high);
        }

        return low;
    }

    /// <summary>Adds energy, hole and verdict.</summary>
    /// <param name="figures">Figures to add to.</param>
    /// <param name="findings">Findings to add to.</param>
    /// <param name="putty">The label.</param>
    /// <param name="stretch">Stretch at the end of the cut.</param>
    /// <param name="length">Length of the cut [m].</param>
    /// <param name="girth">Girth of the liner there, unstretched [m].</param>
    public static void Add(List<Figure> figures, List<Finding> findings, PuttyLabel putty, double stretch, double length, double girth)
    {
        if (putty is not { ShoreA: { } shore, Elongation: { } elongation })
        {
            findings.Add(new("tear", "end of the cut", Verdict.NotKnown, "Whether it tears on is not known: the label gives no hardness or no elongation.", "Copy both from the tub's data sheet; end the cut in a round hole of 6 mm meanwhile."));
            return;
        }

        double modulus = Silicone.Modulus(shore), shortCut = Silicone.ShortCutEnergy(modulus, stretch, length), longCut = Silicone.LongCutEnergy(modulus, stretch, girth);
        double set = Math.Min(shortCut, longCut), hole = Math.Max(LeastHole, Silicone.HoleDiameter(set, BreakShare * Silicone.Stored(modulus, elongation)));
        Terms energy = new();
        string lambda = $"(1 + {energy.Input("stretch", stretch, "")})", stored = $"{energy.Input("modulus", modulus / 1e6, "MPa")}/6·({lambda}^2 + 2/{lambda} - 3)";
        figures.Add(new("cut_energy", "energy that the cut sets free for each new area", "N/mm")
        {
            Value = set / 1000,
            Working = shortCut < longCut
                ? energy.Working($"2·3/sqrt({lambda})·{stored}·{energy.Input("cut", 1000 * length, "mm")}", "greensmith-1963")
                : energy.Working($"{stored}·{energy.Input("girth", 1000 * girth, "mm")}", "rivlin-thomas-1953"),
        });
        Terms diameter = new();
        string broken = $"(1 + {diameter.Input("elongation", elongation, "")})";
        string formula = $"max({diameter.Input("least", 1000 * LeastHole, "mm")}, {diameter.Input("energy", set / 1000, "N/mm")}/({diameter.Input("share", BreakShare, "")}·{diameter.Input("modulus", modulus / 1e6, "MPa")}/6·({broken}^2 + 2/{broken} - 3)))";
        figures.Add(new("hole_diameter", "round hole at the end of the cut, across", "mm") { Value = 1000 * hole, Working = diameter.Working(formula, "thomas-1955") });
        string round = $"End it in a {Number(Math.Ceiling(1000 * hole - 1e-6), 0)} mm round hole, punched, its edge smooth: a round end spreads the stretch over its width, a sharp one tears.";
        if (putty.Tear is not { } tear)
        {
            findings.Add(new("tear", "end of the cut", Verdict.NotKnown, $"Stretched by {Number(100 * stretch, 0)} %, the cut sets {Number(set / 1000, 2)} N/mm free at its end; the label gives no tear strength to compare. {round}", "Copy the tear strength from the tub's data sheet."));
            return;
        }

        double resistance = Silicone.TearResistance(tear), margin = (resistance - set) / resistance;
        findings.Add(new("tear", "end of the cut", Verdicts.Of(margin), $"Stretched by {Number(100 * stretch, 0)} %, a sharp end would get {Number(set / 1000, 2)} N/mm of the {Short(resistance / 1000)} N/mm that tearing takes{(margin < 0 ? ": it would tear on" : " at one pull; many pulls tear at less")}. {round}",
            "Punch the hole before you cut, cut from the edge into it, and look at its edge every week.")
        { Figure = set / 1000, Limit = resistance / 1000, Unit = "N/mm", Margin = margin });
    }
}

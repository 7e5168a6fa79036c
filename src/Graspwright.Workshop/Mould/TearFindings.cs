using Graspwright.Hand;
using Graspwright.Moulding.ComingOff;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;
using static Graspwright.Workshop.Mould.MouldWords;

namespace Graspwright.Workshop.Mould;

/// <summary>Does a cut tear on, and how big is the hole at its end?</summary>
internal static class TearFindings
{
    private const double LeastHole = 0.004; // a leather punch; smaller ones leave a ragged edge (common practice, no source)
    private const double BreakShare = 0.1;  // share of the energy to break that the edge of the hole is allowed, many stretchings long (chosen)

    public static void Add(List<Figure> figures, List<Finding> findings, PuttyLabel putty, double stretch, double length)
    {
        if (putty is not { ShoreA: { } shore, Elongation: { } elongation })
        {
            findings.Add(new("tear", "end of the cut", Verdict.NotKnown, "Whether it tears on is not known: the label gives no hardness or no elongation.", "Copy both from the tub's data sheet; end the cut in a round hole of 6 mm meanwhile."));
            return;
        }

        double modulus = Silicone.Modulus(shore), set = Silicone.TearingEnergy(modulus, stretch, length), breaking = Silicone.Stored(modulus, elongation);
        double hole = Math.Max(LeastHole, Silicone.HoleDiameter(set, BreakShare * breaking));
        Terms energy = new();
        string lambda = $"(1 + {energy.Input("stretch", stretch, "")})";
        string text = $"2·3/sqrt({lambda})·{energy.Input("modulus", modulus / 1e6, "MPa")}/6·({lambda}^2 + 2/{lambda} - 3)·{energy.Input("cut", 1000 * length, "mm")}";
        figures.Add(new("cut_energy", "energy that the cut sets free for each new area", "N/mm") { Value = set / 1000, Working = energy.Working(text, "greensmith-1963") });
        Terms diameter = new();
        string broken = $"(1 + {diameter.Input("elongation", elongation, "")})";
        string formula = $"max({diameter.Input("least", 1000 * LeastHole, "mm")}, {diameter.Input("energy", set / 1000, "N/mm")}/({diameter.Input("share", BreakShare, "")}·{diameter.Input("modulus", modulus / 1e6, "MPa")}/6·({broken}^2 + 2/{broken} - 3)))";
        figures.Add(new("hole_diameter", "round hole at the end of the cut, across", "mm") { Value = 1000 * hole, Working = diameter.Working(formula, "thomas-1955") });
        string round = $"End it in a {Number(Math.Ceiling(1000 * hole), 0)} mm round hole, punched, its edge smooth: a round end spreads the stretch over its width, a sharp one tears.";
        if (putty.Tear is not { } tear)
        {
            findings.Add(new("tear", "end of the cut", Verdict.NotKnown, $"Stretched, the cut sets {Number(set / 1000, 2)} N/mm free at its end; the label gives no tear strength to compare. {round}", "Copy the tear strength from the tub's data sheet."));
            return;
        }

        double resistance = Silicone.TearResistance(tear), margin = (resistance - set) / resistance;
        findings.Add(new("tear", "end of the cut", Verdicts.Of(margin), $"Stretched by {Number(100 * stretch, 0)} %, a sharp end would get {Number(set / 1000, 2)} N/mm of the {Number(resistance / 1000, 1)} N/mm that tearing takes{(margin < 0 ? ": it would tear on" : " at one pull; many pulls tear at less")}. {round}",
            "Punch the hole before you cut, cut from the edge into it, and look at its edge every week.") { Figure = set / 1000, Limit = resistance / 1000, Unit = "N/mm", Margin = margin });
    }
}

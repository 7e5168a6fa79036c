using Graspwright.Hand;
using Graspwright.Moulding.ComingOff;
using Graspwright.Workshop.Results;
using static Graspwright.Workshop.Mould.MouldWords;

namespace Graspwright.Workshop.Mould;

/// <summary>Can the wearer draw the liner off and on alone, with one hand?</summary>
internal static class PullFindings
{
    private const double Slippery = 0.15; // soapy water or powder under silicone (common practice, no source)

    public static void Add(List<Figure> figures, List<Finding> findings, HandModel hand, Girths limb, double snug)
    {
        Liner liner = hand.Liner!;
        LimbForm form = hand.Form!;
        if (liner.Putty.ShoreA is not { } shore)
        {
            findings.Add(new("alone", "one hand", Verdict.NotKnown, "How hard it pulls is not known: the label gives no hardness.", "Copy the Shore A hardness from the tub."));
            return;
        }

        double modulus = Silicone.Modulus(shore);
        PullOff Force(double friction, bool onto) => HoopStretch.Force(limb, form.NearEdge, form.FarEdge, snug, modulus, liner.Thickness, friction, onto);
        foreach ((bool onto, string way) in ((bool, string)[])[(false, "off"), (true, "on")])
        {
            PullOff dry = Force(liner.Off.Friction, onto), wet = Force(Math.Min(Slippery, liner.Off.Friction), onto);
            figures.Add(new($"pull_{way}", $"greatest pull to draw it {way} whole, dry", "N") { Value = dry.Force });
            figures.Add(new($"pull_{way}_wet", $"greatest pull to draw it {way} whole, soapy or powdered", "N") { Value = wet.Force });
            double limit = liner.Off.OneHandPull, margin = (limit - dry.Force) / limit;
            string eased = wet.Force <= limit ? $"with soapy water or powder it takes {Number(wet.Force, 0)} N" : $"even with soapy water or powder it takes {Number(wet.Force, 0)} N";
            findings.Add(new($"alone_{way}", "one hand", Verdicts.Of(margin), $"Drawn {way} whole and dry it pulls with up to {Number(dry.Force, 0)} N ({Number(dry.Force / 9.80665)} kgf); you pull with {Number(limit, 0)} N with one hand; {eased}.",
                onto ? "Turn it inside out and roll it on from the fingertips, a ring at a time: then only one ring slides. Loops at the edge let a hook or the teeth hold it."
                    : "Roll it off from the near edge, a ring at a time; a loop at the edge over a hook on the wall pulls for you.")
            { Figure = dry.Force, Limit = limit, Unit = "N", Margin = margin });
        }

        double pressure = Force(liner.Off.Friction, onto: false).Pressure;
        figures.Add(new("pull_pressure", "greatest pressure on the limb while it passes", "kPa") { Value = pressure / 1000 });
    }
}

using Graspwright.Hand;
using Graspwright.Signals.Contacts;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Signals;

/// <summary>What the contact stud does to skin and liner.</summary>
internal static class StudFindings
{
    /// <summary>Pressure that skin bears all day [Pa]; from memory.</summary>
    private const double AllDayPressure = 30e3;

    public static IEnumerable<Finding> Of(MuscleSignals plan, List<Figure> figures)
    {
        if (plan.Stud is not { } stud)
        {
            yield break;
        }

        StudResult result = StudSums.Of(new()
        {
            DomeDiameter = stud.DomeDiameter,
            DomeHeight = stud.DomeHeight,
            FlangeDiameter = stud.FlangeDiameter,
            HoleDiameter = stud.HoleDiameter,
            LinerThickness = stud.LinerThickness,
            Squeeze = stud.Squeeze,
            ShoreHardness = stud.ShoreHardness,
            TearStrength = stud.TearStrength,
            StretchAtBreak = stud.StretchAtBreak,
            ShellMovement = stud.ShellMovement,
            WireDiameter = stud.WireDiameter,
            WireLength = stud.WireLength,
        });
        Figures(stud, result, figures);
        ContactMetal? metal = ContactMetal.All.FirstOrDefault(m => m.Name == stud.Metal);
        yield return metal is { OnSkin: true }
            ? new("stud_metal", stud.Metal, Verdict.Good, $"{stud.Metal} may lie on skin: {metal.Why}.", "Nothing need change.")
            : new("stud_metal", stud.Metal, Verdict.Fails, $"{stud.Metal} may not lie on skin: {metal?.Why}.", "Turn the domes from titanium, silver, niobium or solid gold.");
        yield return SignalWords.Judged("stud_pressure", "stud", result.SkinPressure / 1e3, AllDayPressure / 1e3, most: true, "kPa",
            $"A dome of {SignalWords.Number(1e3 * stud.DomeHeight)} mm presses on the skin with about {SignalWords.Number(result.SkinPressure / 1e3, "0")} kPa; some 30 kPa can be borne all day (from memory).", "Lower the dome or make it wider, and look for redness.");
        yield return SignalWords.Judged("stud_tear_out", "stud", result.TearOut, stud.PullOut, most: false, "N",
            $"The liner tears at the flange at about {SignalWords.Number(result.TearOut, "0")} N; taking it off may pull {SignalWords.Number(stud.PullOut, "0")} N.", "Thicken the liner at the stud, put a cloth washer in the silicone, or take a silicone of higher tear strength.");
        yield return SignalWords.Judged("stud_slip_out", "stud", 100 * result.SlipStretch, 50, most: false, "%",
            $"The hole must stretch by {SignalWords.Number(100 * result.SlipStretch, "0")} % to let the flange through; the liner breaks at {SignalWords.Number(100 * stud.StretchAtBreak, "0")} %.{(result.SlipStretch < stud.StretchAtBreak ? " So a pulled flange slips out before the liner breaks, and only the clamp stops it." : "")}",
            "A wider flange or a smaller hole.");
        yield return SignalWords.Judged("wire_loop", "wire", 1e3 * stud.WireLength, 1e3 * result.WireNeeded, most: false, "mm",
            $"The wire is {SignalWords.Number(1e3 * stud.WireLength, "0.#")} mm long between liner and shell; a loop that takes {SignalWords.Number(1e3 * stud.ShellMovement, "0.#")} mm without a sharp bend needs {SignalWords.Number(1e3 * result.WireNeeded, "0.#")} mm (ten wire diameters of radius: common practice, no source).", "Leave a longer loop.");
    }

    private static void Figures(ContactStud stud, StudResult result, List<Figure> figures)
    {
        figures.Add(new("stud_pressure", "mean pressure of the dome on the skin", "kPa")
        {
            Value = result.SkinPressure / 1e3,
            Working = new("4/(3·π)·flesh_modulus/(1 - 0.49^2)·sqrt(height/((half_width^2 + height^2)/(2·height)))",
                [new("flesh_modulus", StudSums.FleshModulus / 1e3, "kPa"), new("height", 1e3 * stud.DomeHeight, "mm"), new("half_width", 500 * stud.DomeDiameter, "mm")], "hertz-1882"),
        });
        figures.Add(new("liner_modulus", "Young's modulus of the liner by its hardness", "MPa")
        {
            Value = result.LinerModulus / 1e6,
            Working = new("0.0981·(56 + 7.62336·hardness)/(0.137505·(254 - 2.54·hardness))", [new("hardness", stud.ShoreHardness, "")], "gent-1958"),
        });
        figures.Add(new("clamp_pressure", "pressure of the clamp on the liner", "MPa")
        {
            Value = result.ClampPressure / 1e6,
            Working = new("liner_modulus·squeeze", [new("liner_modulus", result.LinerModulus / 1e6, "MPa"), new("squeeze", stud.Squeeze, "")], "gent-1958"),
        });
        figures.Add(new("stud_tear_out", "pull at which the liner tears at the flange", "N")
        {
            Value = result.TearOut,
            Working = new("2·tear_strength·thickness·(1 - squeeze)", [new("tear_strength", stud.TearStrength / 1e3, "N/mm"), new("thickness", 1e3 * stud.LinerThickness, "mm"), new("squeeze", stud.Squeeze, "")], "stud-sums"),
        });
        figures.Add(new("wire_needed", "wire that the loop needs", "mm")
        {
            Value = 1e3 * result.WireNeeded,
            Working = new("π·10·wire_diameter + movement", [new("wire_diameter", 1e3 * stud.WireDiameter, "mm"), new("movement", 1e3 * stud.ShellMovement, "mm")], "stud-sums"),
        });
    }
}

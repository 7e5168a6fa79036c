using Graspwright.Form.Region;
using Graspwright.Hand;
using Graspwright.Workshop.Results;
using static Graspwright.Workshop.Mould.MouldWords;

namespace Graspwright.Workshop.Form;

/// <summary>What is told about wires over the liner.</summary>
internal static class WireTables
{
    public static IEnumerable<Table> Tables(IReadOnlyList<WireOnForm> wires, FormModel form)
    {
        if (wires.Count > 0)
        {
            yield return new("wires over the liner",
                [new("wire", ""), new("over the form", "mm"), new("of it round skin", "mm"), new("over the sheet", "mm"), new("cut to", "mm"), new("sharpest bend", "mm"), new("bend at", "mm"), new("bend round", "deg"), new("passes", "")],
                [.. wires.Select(w => Row(w, form))]);
        }
    }

    private static IReadOnlyList<Cell> Row(WireOnForm w, FormModel form)
    {
        if (w.Route is null)
        {
            return [w.Wire.Name, default, default, default, default, default, default, default, "no way"];
        }

        (double place, double angle) = form.Frame.Of(w.BendAt);
        bool bent = double.IsFinite(w.Bend);
        return [w.Wire.Name, 1000 * w.Length, 1000 * Math.Max(0, w.Length - w.Free), 1000 * w.Outside, 1000 * w.Cut, bent ? 1000 * w.Bend : default(Cell), bent ? 1000 * place : default(Cell), bent ? double.RadiansToDegrees(LimbFrame.Turn(angle)) : default(Cell), Passes(w)];
    }

    private static string Passes(WireOnForm w) => w.Passes.Count == 0 ? "nothing within 25 mm"
        : string.Join("; ", w.Passes.Select(p => p.Distance <= 0 ? $"over {p.Patch.Name}" : $"{p.Patch.Name} at {Number(1000 * p.Distance)} mm"));

    public static IEnumerable<Finding> Findings(IReadOnlyList<WireOnForm> wires, SheetOnForm sheet, LimbForm limb) => wires.SelectMany(w => Findings(w, sheet, limb));

    private static IEnumerable<Finding> Findings(WireOnForm w, SheetOnForm sheet, LimbForm limb)
    {
        FormModel form = sheet.Form;
        LimbWire wire = w.Wire;
        if (w.Route is null)
        {
            yield return w.Refusal is { } refusal ? new("wire", wire.Name, Verdict.NotKnown, $"No way was found for the wire {wire.Name}: {refusal}", "Thin or mend the scan where its triangles are slivers, then ask again.")
                : w.Stray >= 0 ? Strayed(w, form, limb)
                : new("wire", wire.Name, Verdict.Fails, $"For the wire {wire.Name} there is no way over the sheet that keeps {Number(1000 * wire.Clearance)} mm from tender, scarred, bony and numb skin.", "Move one of its ends, allow less clearance, or lead it out of the liner sooner.");
            yield break;
        }

        foreach (Finding crossing in Crossings(w, form))
        {
            yield return crossing;
        }

        foreach (WirePass pass in w.Passes.Where(p => p.Distance <= 0 && p.Patch.Kind == PatchKind.Contact))
        {
            yield return new("wire", wire.Name, Verdict.Tight, $"The wire {wire.Name} goes over {pass.Patch.Name}, another contact: two leads that lie on each other couple, and one is in the way when the other is mended.", "Send it by another spot with via_place and via_angle.");
        }

        if (wire.Diameter is { } d)
        {
            double least = wire.LeastBend * d;
            bool bad = w.Bend < least;
            yield return new("wire_bend", wire.Name, bad ? Verdict.Fails : w.Bend < 1.1 * least ? Verdict.Tight : Verdict.Good,
                double.IsFinite(w.Bend) ? $"The sharpest bend of the wire {wire.Name} has a radius of {Number(1000 * w.Bend)} mm, {FormAnswer.At(form, w.BendAt)}; {Short(wire.LeastBend)} times its diameter is {Number(1000 * least)} mm." : $"The wire {wire.Name} lies straight.",
                bad ? "Take a thinner or finer stranded wire, or lead it by another spot with via_place and via_angle." : "Nothing need change.")
            { Figure = double.IsFinite(w.Bend) ? 1000 * w.Bend : null, Limit = 1000 * least, Unit = "mm" };
        }

        double more = w.Length - w.Free;
        yield return new("wire", wire.Name, Verdict.Good, $"The wire {wire.Name} goes {Number(1000 * w.Length, 0)} mm over the form{(more > 0.5e-3 ? $", {Number(1000 * more)} mm of that to keep {Number(1000 * wire.Clearance)} mm off the skin it must not rub" : "")}; over the outside of the sheet that is {Number(1000 * w.Outside, 0)} mm: cut it {Number(1000 * w.Cut, 0)} mm long between its ends, and what the joints take more.",
            "Nothing need change.");
    }

    /// <summary>Where a wire crosses seams.</summary>
    public static IEnumerable<Finding> Crossings(WireOnForm w, FormModel form) => w.Crossings.Select(at => new Finding("wire_seam", w.Wire.Name, Verdict.Tight,
        $"The wire {w.Wire.Name} crosses a seam {FormAnswer.At(form, at)}: there the sheet is glued or sewn, and pulls.", "Lead it over the seam on the outside with a small loop of slack; or move an end, or the seam."));

    private static Finding Strayed(WireOnForm w, FormModel form, LimbForm limb)
    {
        LimbWire wire = w.Wire;
        LimbSpot spot = w.Stray == 0 ? wire.From : w.Stray == 1 && wire.Via is { } via ? via : wire.To;
        string which = w.Stray == 0 ? "begins" : spot == wire.Via ? "passes" : "ends";
        LimbPatch? patch = limb.Patches.FirstOrDefault(p => p.Name == spot.Patch);
        (double place, double angle) = patch is null ? (spot.Place, spot.AngleRadians) : SkinMap.Middle(form.Frame, patch);
        LimbPatch? near = limb.Patches.Where(p => WireOnForm.KeepsOff(p.Kind)).FirstOrDefault(p => Off(p, place, angle, form) < wire.Clearance);
        string where = $"at {Number(1000 * place, 0)} mm, {Number(double.RadiansToDegrees(LimbFrame.Turn(angle)), 0)}° round from the back";
        return new("wire", wire.Name, Verdict.Fails, near is not null ? $"The wire {wire.Name} {which} {where}: on {near.Name} or nearer to it than {Number(1000 * wire.Clearance)} mm." : $"The wire {wire.Name} {which} {where}, where there is no sheet.",
            near is not null ? "Move that spot off the skin that must not be rubbed; a contact belongs on skin that bears it." : "Keep its spots between the liner's edges and off the thumb's opening.");
    }

    private static double Off(LimbPatch patch, double place, double angle, FormModel form) => SkinMap.Outline(form.Frame, patch).At(place, angle);
}

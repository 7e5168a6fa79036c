using Graspwright.Form.Tape;
using Graspwright.Hand;
using Graspwright.Moulding.Copies;

namespace Graspwright.Workshop.Mould;

/// <summary>Girths, volumes and mixes along the chain of copies, at the widest mark within the liner.</summary>
internal sealed record CopySums
{
    // Half widths of what is not known: films by half, plaster 0.1 %, silicone 0.1 %, wax 0.5 % and 0.2 mm, shell 0.2 % and 0.2 mm (chosen).
    private const double PlasterSpread = 0.001, SiliconeSpread = 0.001, WaxSpread = 0.005, ShellSpread = 0.002, ThicknessSpread = 0.0002, TapeSpread = 0.0005;

    /// <summary>Girth of the limb [m].</summary>
    public required double Girth { get; init; }

    /// <summary>The chain.</summary>
    public required IReadOnlyList<CopyGirth> Chain { get; init; }

    /// <summary>Girth of the inside of the liner if nothing is taken off the plaster [m].</summary>
    public required double LinerInside { get; init; }

    /// <summary>Depth to take off the plaster [m].</summary>
    public required double TakeOff { get; init; }

    /// <summary>Its half width [m].</summary>
    public required double TakeOffSpread { get; init; }

    /// <summary>Girth of the outside of the liner [m].</summary>
    public required double LinerOutside { get; init; }

    /// <summary>Girth of the inside of the shell [m].</summary>
    public required double ShellInside { get; init; }

    /// <summary>Gap between liner and shell [m].</summary>
    public required double Gap { get; init; }

    /// <summary>Its half width [m].</summary>
    public required double GapSpread { get; init; }

    /// <summary>The plaster mixes: negative, plaster, plaster over the wax.</summary>
    public required IReadOnlyList<(string Key, string Words, double Volume, PlasterMix Mix)> Plasters { get; init; }

    /// <summary>Volume of the liner [m³].</summary>
    public required double LinerVolume { get; init; }

    /// <summary>Volume of the wax [m³].</summary>
    public required double WaxVolume { get; init; }

    /// <summary>Volume of the shell [m³].</summary>
    public required double ShellVolume { get; init; }

    public static CopySums Of(HandModel hand)
    {
        CopyPlan p = hand.Copies!;
        Liner liner = hand.Liner!;
        LimbForm form = hand.Form!;
        TapeForm limb = MouldMapping.Form(form);
        double girth = form.Marks.Where(m => m.Place >= form.NearEdge && m.Place <= form.FarEdge).Select(m => m.Girth).DefaultIfEmpty(limb.At(form.NearEdge).Girth).Max();
        double film = p.Film, half = film / 2;
        IReadOnlyList<CopyGirth> first = CopyChain.Follow(girth,
        [
            new("negative, inside", film, half, p.PlasterGrowth, PlasterSpread),
            new("plaster", -film, half, p.PlasterGrowth, PlasterSpread),
            new("liner, inside", film, half, -p.SiliconeShrinkage, SiliconeSpread),
        ]);
        double inside = first[^1].Girth, wanted = girth * (1 - p.Snug), takeOff = CopyChain.TakeOff(inside, wanted);
        double start = inside - 2 * Math.PI * takeOff;
        IReadOnlyList<CopyGirth> second = CopyChain.Follow(start,
        [
            new("plaster corrected, liner inside", 0, 0, 0, 0),
            new("liner, outside", liner.Thickness, ThicknessSpread, 0, 0),
            new("wax", p.Wax * (1 - p.WaxShrinkage), double.Hypot(ThicknessSpread, p.Wax * WaxSpread), 0, 0), // held on the liner: only its thickness shrinks
            new("plaster over the wax", film, half, p.PlasterGrowth, PlasterSpread),
            new("shell, outside", -film, half, -p.ShellShrinkage, ShellSpread),
            new("shell, inside", -p.Shell, ThicknessSpread, 0, 0),
        ]);
        double outside = second[1].Girth;
        double length = form.FarEdge - form.NearEdge, surface = TapeForm.Area(limb.Outline(form.NearEdge, form.FarEdge, 0, 0));
        double Wall(double thickness, double offset) => thickness * (surface + Math.PI * (2 * offset + thickness) * length);
        (string, string, double)[] volumes = [("negative", "negative", Wall(p.NegativeWall, 0)), ("plaster", "plaster", limb.Volume(form.NearEdge, form.FarEdge)), ("over_wax", "plaster over the wax", Wall(p.NegativeWall, liner.Thickness + p.Wax))];
        return new()
        {
            Girth = girth,
            Chain = [.. first, .. second],
            LinerInside = inside,
            TakeOff = takeOff,
            TakeOffSpread = double.Hypot(first[^1].Spread / (2 * Math.PI), TapeSpread / (2 * Math.PI)),
            LinerOutside = outside,
            ShellInside = second[^1].Girth,
            Gap = (second[^1].Girth - outside) / (2 * Math.PI),
            GapSpread = second[^1].Spread / (2 * Math.PI),
            Plasters = [.. volumes.Select(v => (v.Item1, v.Item2, v.Item3, PlasterMix.Of(v.Item3, p.WaterForPowder)))],
            LinerVolume = Wall(liner.Thickness, 0),
            WaxVolume = Wall(p.Wax, liner.Thickness),
            ShellVolume = Wall(p.Shell, liner.Thickness + p.Gap),
        };
    }
}

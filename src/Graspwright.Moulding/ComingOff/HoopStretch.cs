namespace Graspwright.Moulding.ComingOff;

/// <summary>Stretch of one place of a tube on its way off.</summary>
/// <param name="Place">Place on the limb [m].</param>
/// <param name="Girth">Girth of the tube there, unstretched [m].</param>
/// <param name="Largest">Largest girth that it has to pass [m].</param>
/// <param name="LargestAt">Where that is [m].</param>
/// <param name="Stretch">Elongation round the limb, 0 = none.</param>
public readonly record struct StretchAt(double Place, double Girth, double Largest, double LargestAt, double Stretch);

/// <summary>A straight cut along a tube.</summary>
/// <param name="From">Its open end, at an edge of the tube [m].</param>
/// <param name="To">Where it ends in a round hole [m].</param>
public readonly record struct Cut(double From, double To)
{
    /// <summary>Length [m].</summary>
    public double Length => Math.Abs(To - From);
}

/// <summary>What pulling a tube off takes.</summary>
/// <param name="Force">Greatest axial force [N].</param>
/// <param name="Pressure">Greatest pressure on the limb [Pa].</param>
public readonly record struct PullOff(double Force, double Pressure);

/// <summary>How far a tube must stretch to come off a limb, and where to cut it if it will not.</summary>
public static class HoopStretch
{
    private const double Step = 0.0005;

    /// <summary>Stretch along the tube.</summary>
    /// <param name="limb">Girths of the limb; the tube comes off toward rising places.</param>
    /// <param name="from">Edge of the tube away from the open end [m].</param>
    /// <param name="to">Edge toward the open end [m].</param>
    /// <param name="snug">By which share the tube is made smaller than the limb, 0 or more and below 1.</param>
    /// <param name="end">End of the limb, where nothing more has to be passed [m].</param>
    public static IReadOnlyList<StretchAt> Along(Girths limb, double from, double to, double snug, double end)
    {
        ArgumentNullException.ThrowIfNull(limb);
        IReadOnlyList<double> grid = limb.Grid(from, Math.Max(to, end), Step);
        StretchAt[] found = new StretchAt[grid.Count];
        double largest = 0, at = to;
        for (int i = grid.Count - 1; i >= 0; i--)
        {
            double girth = limb.At(grid[i]);
            if (girth >= largest)
            {
                (largest, at) = (girth, grid[i]);
            }

            double own = girth * (1 - snug);
            found[i] = new(grid[i], own, largest, at, largest / own - 1);
        }

        return [.. found.Where(s => s.Place <= to)];
    }

    /// <summary>The shortest straight cut from either edge after which no uncut place stretches more than allowed.</summary>
    /// <param name="stretch">Stretch along the tube, places rising.</param>
    /// <param name="allowed">Greatest elongation allowed.</param>
    /// <returns>The cut from the far edge and the one from the near edge; <see langword="null"/> if none is needed.</returns>
    public static (Cut FromNear, Cut FromFar)? Cuts(IReadOnlyList<StretchAt> stretch, double allowed)
    {
        ArgumentNullException.ThrowIfNull(stretch);
        int first = -1, last = -1;
        for (int i = 0; i < stretch.Count; i++)
        {
            if (stretch[i].Stretch > allowed)
            {
                first = first < 0 ? i : first;
                last = i;
            }
        }

        if (first < 0)
        {
            return null;
        }

        double near = stretch[0].Place, far = stretch[^1].Place;
        return (new(near, last == stretch.Count - 1 ? far : Crossing(stretch[last], stretch[last + 1], allowed)),
            new(far, first == 0 ? near : Crossing(stretch[first - 1], stretch[first], allowed)));
    }

    /// <summary>Axial force of drawing a tube off or on, every place held back by friction and by the widening ahead of it.</summary>
    /// <param name="limb">Girths of the limb.</param>
    /// <param name="from">Near edge [m].</param>
    /// <param name="to">Far edge [m].</param>
    /// <param name="snug">Share by which the tube is smaller than the limb.</param>
    /// <param name="modulus">Modulus of elasticity [Pa].</param>
    /// <param name="thickness">Thickness of the tube [m].</param>
    /// <param name="friction">Coefficient of friction on skin.</param>
    /// <param name="onto">Whether it is drawn on, toward the near end, instead of off.</param>
    /// <remarks>
    /// Thin ring, small strain: hoop force E·t·ε a metre of length, pressure 2·π·E·t·ε ÷ girth, so that a metre of tube presses with
    /// 2·π·E·t·ε and drags with μ times that, plus or less what the slope of the radius adds. The tube is moved in steps and the greatest force is kept.
    /// </remarks>
    public static PullOff Force(Girths limb, double from, double to, double snug, double modulus, double thickness, double friction, bool onto = false)
    {
        ArgumentNullException.ThrowIfNull(limb);
        const int places = 120, moves = 60;
        double width = (to - from) / places, most = 0, pressure = 0, end = limb.Places[^1];
        double[] rests = [.. Enumerable.Range(0, places).Select(i => limb.At(from + (i + 0.5) * width) * (1 - snug))];
        for (int m = 0; m <= moves; m++)
        {
            double shift = (end - from) * m / moves, force = 0;
            for (int i = 0; i < places; i++)
            {
                double own = from + (i + 0.5) * width, here = own + shift;
                if (here > end)
                {
                    break;
                }

                double girth = limb.At(here), strain = Math.Max(0, girth / rests[i] - 1);
                double slope = (limb.At(here + width / 2) - limb.At(here - width / 2)) / width / (2 * Math.PI);
                force += width * 2 * Math.PI * modulus * thickness * strain * Math.Max(0, friction + (onto ? -slope : slope));
                pressure = Math.Max(pressure, 2 * Math.PI * modulus * thickness * strain / girth);
            }

            most = Math.Max(most, force);
        }

        return new(most, pressure);
    }

    private static double Crossing(StretchAt a, StretchAt b, double allowed)
    {
        // 1 + stretch = largest ÷ girth, both straight in place between two neighbours of the grid: solve largest = (1 + allowed)·girth.
        double missA = a.Largest - (1 + allowed) * a.Girth, missB = b.Largest - (1 + allowed) * b.Girth;
        return missA == missB ? a.Place : a.Place + (b.Place - a.Place) * missA / (missA - missB);
    }
}

using Graspwright.Numerics;

namespace Graspwright.Mechanics.Holding;

/// <summary>How springs at the contacts share a load while nothing slips: Σ K·(u + ω × r) balances the load.</summary>
/// <remarks>
/// Each contact has its stiffness along the normal and, across it, 2(1 − ν)/(2 − ν) of that (R. D. Mindlin 1949, from
/// memory), two thirds for rubber (ν = 0.5). The fingers' joints stand still meanwhile.
/// </remarks>
internal sealed class ElasticShare
{
    private const double Sticking = 2.0 / 3, Sliding = 1e-3;
    private readonly Grasp _grasp;
    private readonly double _across;
    private readonly double[] _matrix = new double[36];

    public ElasticShare(Grasp grasp, double across = Sticking)
    {
        _grasp = grasp;
        _across = across;
        foreach (HoldContact c in grasp.Contacts)
        {
            (Vector3D first, Vector3D second) = LoadLimit.Tangents(c.Normal);
            Add(c, c.Normal, c.Stiffness);
            Add(c, first, _across * c.Stiffness);
            Add(c, second, _across * c.Stiffness);
            Turn(c.Normal, c.Stiffness * _across * c.SpinRadius * c.SpinRadius);
        }

        // A grip that leaves a motion free (two points: turning about their line) is given a very weak spring there.
        double greatest = 0;
        for (int i = 0; i < 6; i++)
        {
            greatest = Math.Max(greatest, _matrix[i * 7]);
        }

        for (int i = 0; i < 6; i++)
        {
            _matrix[i * 7] += 1e-9 * greatest;
        }
    }

    /// <summary>
    /// How much each normal force may grow for one unit of the load [N]: the larger of what springs give it while
    /// everything sticks, and when everything has slid and settled (no contact then pulls).
    /// </summary>
    public double[] Growth(OutsideLoad load)
    {
        double[] growth = new double[_grasp.Contacts.Count];
        Take(growth, Shares(load), [.. Enumerable.Range(0, growth.Length)]);
        List<int> touching = [.. Enumerable.Range(0, growth.Length)];
        while (touching.Count > 0)
        {
            Grasp pressed = _grasp with { Contacts = [.. touching.Select(c => _grasp.Contacts[c])] };
            Vector3D[] shares = new ElasticShare(pressed, Sliding).Shares(load);
            int worst = -1;
            double least = -1e-9 * load.Force.Length - 1e-12;
            for (int i = 0; i < touching.Count; i++)
            {
                double normal = shares[i].Dot(pressed.Contacts[i].Normal);
                (worst, least) = normal < least ? (i, normal) : (worst, least);
            }

            if (worst < 0)
            {
                Take(growth, shares, touching);
                break;
            }

            touching.RemoveAt(worst);
        }

        return growth;
    }

    private void Take(double[] growth, Vector3D[] shares, List<int> contacts)
    {
        for (int i = 0; i < shares.Length; i++)
        {
            growth[contacts[i]] = Math.Max(growth[contacts[i]], shares[i].Dot(_grasp.Contacts[contacts[i]].Normal));
        }
    }

    /// <summary>The load factor at which the first contact meets its cone, and the way the object slides there.</summary>
    public (double Factor, ContactSlip Slip) FirstSlip(IReadOnlyList<Vector3D> unloaded, OutsideLoad load)
    {
        Vector3D[] shares = Shares(load);
        double least = double.PositiveInfinity;
        ContactSlip slip = new(-1, default);
        for (int c = 0; c < shares.Length; c++)
        {
            HoldContact contact = _grasp.Contacts[c];
            Vector3D n = contact.Normal, before = unloaded[c];
            double n0 = before.Dot(n), n1 = shares[c].Dot(n);
            Vector3D t0 = before - n0 * n, t1 = shares[c] - n1 * n;
            double factor = Meets(t0, t1, n0, n1, contact.Friction);
            if (factor < least && t1.Length > 1e-9)
            {
                least = factor;
                slip = new(c, -(t0 + factor * t1).Unit);
            }
        }

        return (least, slip);
    }

    /// <summary>Smallest factor ≥ 0 at which |t0 + f·t1| = μ·(n0 + f·n1).</summary>
    private static double Meets(Vector3D t0, Vector3D t1, double n0, double n1, double friction)
    {
        double mu2 = friction * friction;
        double a = t1.Dot(t1) - mu2 * n1 * n1, b = 2 * (t0.Dot(t1) - mu2 * n0 * n1), c = t0.Dot(t0) - mu2 * n0 * n0;
        if (c >= -1e-12)
        {
            return double.PositiveInfinity; // it has settled, sliding, while the hand closed: it is not the load that makes it slip
        }

        if (Math.Abs(a) < 1e-15)
        {
            return b > 0 ? -c / b : double.PositiveInfinity;
        }

        double root = b * b - 4 * a * c;
        if (root < 0)
        {
            return double.PositiveInfinity;
        }

        double q = -0.5 * (b + (b >= 0 ? 1 : -1) * Math.Sqrt(root)), one = q / a, two = q == 0 ? double.PositiveInfinity : c / q;
        return Math.Min(one > 0 ? one : double.PositiveInfinity, two > 0 ? two : double.PositiveInfinity);
    }

    /// <summary>
    /// Forces before any load: each finger's contact as the closing run has it, palm and thumb as springs that the
    /// fingers press the object on; one that would have to pull is left out.
    /// </summary>
    /// <returns><see langword="null"/> where what stays does not hold the object.</returns>
    public static Vector3D[]? Pressed(Grasp grasp)
    {
        Vector3D[] forces = new Vector3D[grasp.Contacts.Count];
        Vector3D sum = default, moment = default;
        List<int> back = [];
        for (int c = 0; c < forces.Length; c++)
        {
            HoldContact contact = grasp.Contacts[c];
            if (contact.Kind != ContactKind.Finger)
            {
                back.Add(c);
                continue;
            }

            forces[c] = contact.Preload * contact.Normal;
            sum += forces[c];
            moment += (contact.Place - grasp.Centre).Cross(forces[c]);
        }

        while (back.Count > 0)
        {
            Grasp behind = grasp with { Contacts = [.. back.Select(c => grasp.Contacts[c])] };
            Vector3D[] pushes = new ElasticShare(behind).Shares(new(sum, grasp.Centre, moment));
            int worst = -1;
            double least = -1e-9;
            for (int i = 0; i < back.Count; i++)
            {
                double normal = pushes[i].Dot(grasp.Contacts[back[i]].Normal);
                forces[back[i]] = pushes[i];
                if (normal < least)
                {
                    (worst, least) = (i, normal);
                }
            }

            if (worst < 0)
            {
                return forces;
            }

            forces[back[worst]] = default;
            back.RemoveAt(worst);
        }

        return sum.Length < 1e-9 ? forces : null;
    }

    /// <summary>Change of each contact force on the object for one unit of the load [N].</summary>
    private Vector3D[] Shares(OutsideLoad load)
    {
        Vector3D moment = load.MomentAbout(_grasp.Centre);
        double[] x = Solve([load.Force.X, load.Force.Y, load.Force.Z, moment.X, moment.Y, moment.Z]);
        Vector3D u = new(x[0], x[1], x[2]), w = new(x[3], x[4], x[5]);
        Vector3D[] forces = new Vector3D[_grasp.Contacts.Count];
        for (int i = 0; i < forces.Length; i++)
        {
            HoldContact c = _grasp.Contacts[i];
            Vector3D move = u + w.Cross(c.Place - _grasp.Centre);
            double along = move.Dot(c.Normal);
            forces[i] = -c.Stiffness * (along * c.Normal + _across * (move - along * c.Normal));
        }

        return forces;
    }

    private void Add(HoldContact c, Vector3D direction, double stiffness)
    {
        Vector3D m = (c.Place - _grasp.Centre).Cross(direction);
        Span<double> g = [direction.X, direction.Y, direction.Z, m.X, m.Y, m.Z];
        Outer(g, stiffness);
    }

    private void Turn(Vector3D normal, double stiffness) => Outer([0, 0, 0, normal.X, normal.Y, normal.Z], stiffness);

    private void Outer(ReadOnlySpan<double> g, double stiffness)
    {
        for (int i = 0; i < 6; i++)
        {
            for (int j = 0; j < 6; j++)
            {
                _matrix[i * 6 + j] += stiffness * g[i] * g[j];
            }
        }
    }

    /// <summary>Cholesky on the 6 × 6 matrix.</summary>
    private double[] Solve(double[] b)
    {
        Span<double> l = stackalloc double[36];
        for (int i = 0; i < 6; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = _matrix[i * 6 + j];
                for (int k = 0; k < j; k++)
                {
                    sum -= l[i * 6 + k] * l[j * 6 + k];
                }

                l[i * 6 + j] = i == j ? Math.Sqrt(Math.Max(sum, 1e-30)) : sum / l[j * 7];
            }
        }

        for (int i = 0; i < 6; i++)
        {
            for (int k = 0; k < i; k++)
            {
                b[i] -= l[i * 6 + k] * b[k];
            }

            b[i] /= l[i * 7];
        }

        for (int i = 5; i >= 0; i--)
        {
            for (int k = i + 1; k < 6; k++)
            {
                b[i] -= l[k * 6 + i] * b[k];
            }

            b[i] /= l[i * 7];
        }

        return b;
    }
}

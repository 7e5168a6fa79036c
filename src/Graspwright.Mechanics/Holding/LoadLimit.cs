using Graspwright.Numerics;

namespace Graspwright.Mechanics.Holding;

/// <summary>The greatest load that a grip bears: balance in space, Coulomb friction, forces that the drive or the locks allow.</summary>
/// <remarks>
/// Unknown are the contact forces f (inside round friction cones, with friction against turning on the spot) and the
/// load factor λ; wanted is the greatest λ with Σf + λ·load = 0 and Σ(r × f) + λ·moment = 0. Squeezing: each free
/// motion of a finger keeps the drive's generalised force, Σ f·v = Q, so a finger's forces shift between its segments
/// but do not grow; palm and thumb push back. Locked: Σ f·v ≤ what the lock bears, and each normal force is at most
/// preload + λ·share, the share being the larger of what springs at the contacts would take sticking, and slid and settled.
/// </remarks>
public sealed class LoadLimit
{
    private const double Arm = 0.04; // metres by which moments are divided, so that rows are alike
    private const double Along = 0.7; // cosine from which a load counts as going with gravity
    private const double Rounding = 1e-6; // so that shares which balance the load exactly still do so when rounded
    private readonly Grasp _grasp;
    private readonly ConeProgram _program;
    private readonly int _factor, _balance = 6;
    private readonly int[] _boundRow;
    private readonly int _rows;
    private readonly ElasticShare _elastic;
    private OutsideLoad _growthLoad;
    private double[]? _growth;

    /// <summary>Sets a grip up.</summary>
    /// <param name="grasp">The grip; at least one contact.</param>
    public LoadLimit(Grasp grasp)
    {
        ArgumentNullException.ThrowIfNull(grasp);
        _grasp = grasp;
        _elastic = new(grasp);
        int contacts = grasp.Contacts.Count, motions = grasp.Locked ? grasp.LockLimits.Count : grasp.Drives.Count;
        _boundRow = new int[contacts];
        int row = _balance + motions + 1;
        for (int c = 0; c < contacts; c++)
        {
            _boundRow[c] = (grasp.Locked && grasp.Contacts[c].Kind != ContactKind.Thumb) || double.IsFinite(grasp.Contacts[c].MostNormal) ? row++ : -1;
        }

        _rows = row;
        _program = new(_rows);
        AddCones();
        AddMotions();
        double[] cap = new double[_rows];
        cap[_balance + motions] = 1;
        _program.Add(cap, 0);
        _program.Right[_balance + motions] = 1; // in units of the most that is told, so that its size does not coarsen the other rows
        _factor = _program.Add(new double[_rows], 1);
        CapRow = _balance + motions;
    }

    private int CapRow { get; }

    /// <summary>Contact forces with the least palm and thumb force that balance the fingers before any load; <see langword="null"/> = nothing does.</summary>
    public Vector3D[]? Unloaded()
    {
        Load(default, new double[_grasp.Contacts.Count]);
        _program.Cost(_factor, 0);
        double[] cost = [.. _grasp.Contacts.Select(c => c.Kind == ContactKind.Finger ? 0.0 : -1)];
        bool balanced = _program.Solve(cost);
        _program.Cost(_factor, 1);
        return balanced ? Forces() : null;
    }

    /// <summary>The greatest load factor.</summary>
    /// <param name="load">The load.</param>
    /// <param name="frictionScale">What every coefficient of friction is multiplied by.</param>
    public double Factor(OutsideLoad load, double frictionScale = 1) => Solve(load, frictionScale) ? Math.Max(0, _program.ValueOf(_factor)) : HoldResult.NotBalanced;

    /// <summary>Everything about the limit of a load.</summary>
    /// <param name="load">The load, not all of it 0.</param>
    /// <param name="gravity">Unit direction of gravity, to tell a drop from a pull.</param>
    public HoldResult Hold(OutsideLoad load, Vector3D gravity)
    {
        Vector3D[]? pressed = ElasticShare.Pressed(_grasp);
        if (!Solve(load, 1))
        {
            return new() { Factor = HoldResult.NotBalanced, Mode = GiveWay.PushedOut };
        }

        double factor = Math.Max(0, _program.ValueOf(_factor));
        ReadOnlySpan<double> prices = _program.Prices;
        Vector3D velocity = new(prices[0], prices[1], prices[2]), turning = 1 / Arm * new Vector3D(prices[3], prices[4], prices[5]);
        Vector3D[] forces = Forces();
        double normals = 0;
        for (int c = 0; c < forces.Length; c++)
        {
            normals += forces[c].Dot(_grasp.Contacts[c].Normal);
        }

        (double first, ContactSlip slip) = pressed is null ? (double.NaN, new(-1, default)) : _elastic.FirstSlip(pressed, load);
        return new()
        {
            Factor = factor,
            Gap = factor > 0 ? _program.Gap * normals / factor : 0,
            FirstSlipFactor = first,
            FirstSlip = slip,
            Velocity = velocity,
            Turning = turning,
            Forces = forces,
            Mode = factor >= HoldResult.MostFactor * (1 - 1e-6) ? GiveWay.None : ModeOf(velocity, turning, load, gravity),
        };
    }

    /// <summary>Multiple of every coefficient of friction at which the load is just held; 0 = none is needed, infinite = none is enough.</summary>
    /// <param name="load">The load.</param>
    public double FrictionNeeded(OutsideLoad load)
    {
        if (Held(load, 0))
        {
            return 0;
        }

        double low = 0, high = 1;
        while (!Held(load, high))
        {
            low = high;
            high *= 2;
            if (high > 64)
            {
                return double.PositiveInfinity;
            }
        }

        while (high - low > 2e-3 * high)
        {
            double middle = 0.5 * (low + high);
            if (Held(load, middle))
            {
                high = middle;
            }
            else
            {
                low = middle;
            }
        }

        return high;
    }

    private bool Held(OutsideLoad load, double scale) => Solve(load, scale) && _program.ValueOf(_factor) >= 1;

    private bool Solve(OutsideLoad load, double frictionScale)
    {
        Load(load, GrowthOf(load));
        for (int c = 0; c < _grasp.Contacts.Count; c++)
        {
            _program.Friction(c, frictionScale * _grasp.Contacts[c].Friction);
        }

        bool balanced = _program.Solve();
        if (frictionScale != 1)
        {
            for (int c = 0; c < _grasp.Contacts.Count; c++)
            {
                _program.Friction(c, _grasp.Contacts[c].Friction);
            }
        }

        return balanced;
    }

    /// <summary>Growth under a load, kept for the next question about the same one.</summary>
    private double[] GrowthOf(OutsideLoad load)
    {
        if (_growth is null || load != _growthLoad)
        {
            (_growthLoad, _growth) = (load, _grasp.Locked ? _elastic.Growth(load) : new double[_grasp.Contacts.Count]);
        }

        return _growth;
    }

    private void Load(OutsideLoad load, double[] shares)
    {
        double[] column = new double[_rows];
        Vector3D moment = load.MomentAbout(_grasp.Centre);
        Put(column, load.Force, moment);
        column[CapRow] = 1 / HoldResult.MostFactor;
        for (int c = 0; c < shares.Length; c++)
        {
            if (_boundRow[c] >= 0)
            {
                column[_boundRow[c]] = -Math.Max(0, shares[c]) * (1 + Rounding);
            }
        }

        _program.Replace(_factor, column);
    }

    private void AddCones()
    {
        for (int c = 0; c < _grasp.Contacts.Count; c++)
        {
            HoldContact contact = _grasp.Contacts[c];
            (Vector3D first, Vector3D second) = Tangents(contact.Normal);
            List<double[]> tangents = [Column(c, first), Column(c, second)];
            if (contact.SpinRadius > 0)
            {
                double[] spin = new double[_rows];
                Put(spin, default, contact.SpinRadius * contact.Normal);
                tangents.Add(spin);
            }

            double[] normal = Column(c, contact.Normal);
            if (_boundRow[c] >= 0)
            {
                normal[_boundRow[c]] = 1;
                double[] slack = new double[_rows];
                slack[_boundRow[c]] = 1;
                _program.Add(slack, 0);
                double most = _grasp.Locked && contact.Kind != ContactKind.Thumb ? contact.Preload : contact.MostNormal;
                _program.Right[_boundRow[c]] = most;
            }

            _program.Add(new ConeProgram.Cone(normal, [.. tangents], contact.Friction));
        }
    }

    private void AddMotions()
    {
        IReadOnlyList<FingerDrive> motions = _grasp.Locked ? _grasp.LockLimits : _grasp.Drives;
        for (int m = 0; m < motions.Count; m++)
        {
            _program.Right[_balance + m] = motions[m].Drive;
            if (_grasp.Locked)
            {
                double[] slack = new double[_rows];
                slack[_balance + m] = 1;
                _program.Add(slack, 0);
            }
        }
    }

    /// <summary>What a unit force at a contact does to the rows.</summary>
    private double[] Column(int contact, Vector3D force)
    {
        double[] column = new double[_rows];
        HoldContact c = _grasp.Contacts[contact];
        Put(column, force, (c.Place - _grasp.Centre).Cross(force));
        IReadOnlyList<FingerDrive> motions = _grasp.Locked ? _grasp.LockLimits : _grasp.Drives;
        for (int m = 0; m < motions.Count; m++)
        {
            if (c.Finger == motions[m].Finger && c.Kind == ContactKind.Finger)
            {
                column[_balance + m] = force.InPlane.Dot(c.Motions[motions[m].Motion]);
            }
        }

        return column;
    }

    private static void Put(double[] column, Vector3D force, Vector3D moment)
    {
        column[0] = force.X;
        column[1] = force.Y;
        column[2] = force.Z;
        column[3] = moment.X / Arm;
        column[4] = moment.Y / Arm;
        column[5] = moment.Z / Arm;
    }

    private Vector3D[] Forces()
    {
        Vector3D[] forces = new Vector3D[_grasp.Contacts.Count];
        double[] rows = new double[_rows];
        for (int c = 0; c < forces.Length; c++)
        {
            _program.Contribution(c, rows);
            forces[c] = new(rows[0], rows[1], rows[2]);
        }

        return forces;
    }

    /// <summary>Where the load's power goes at the limit: into which motion.</summary>
    private GiveWay ModeOf(Vector3D velocity, Vector3D turning, OutsideLoad load, Vector3D gravity)
    {
        Vector3D moment = load.MomentAbout(_grasp.Centre), axis = _grasp.Axis;
        double twist = Math.Abs(moment.Dot(axis) * turning.Dot(axis)), turn = Math.Abs(moment.Dot(turning));
        double slide = Math.Abs(load.Force.Dot(axis) * velocity.Dot(axis)), move = Math.Abs(load.Force.Dot(velocity));
        double tip = Math.Max(0, turn - twist), pull = Math.Max(0, move - slide), most = Math.Max(Math.Max(twist, tip), Math.Max(slide, pull));
        if (most == twist)
        {
            return GiveWay.Twist;
        }

        if (most == tip)
        {
            return GiveWay.Tip;
        }

        bool falls = gravity.Length > 0 && load.Force.Unit.Dot(gravity) > Along;
        return falls ? GiveWay.Drop : most == slide ? GiveWay.Slide : GiveWay.PullOut;
    }

    /// <summary>Two unit directions across a normal.</summary>
    internal static (Vector3D First, Vector3D Second) Tangents(Vector3D normal)
    {
        Vector3D helper = Math.Abs(normal.Z) < 0.9 ? new(0, 0, 1) : new(1, 0, 0);
        Vector3D first = normal.Cross(helper).Unit;
        return (first, normal.Cross(first));
    }
}

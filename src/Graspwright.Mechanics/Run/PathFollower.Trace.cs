using Graspwright.Mechanics.Equilibrium;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Run;

/// <content>Recorded states, events, jumps, peaks.</content>
internal sealed partial class PathFollower
{
    private readonly List<double[]> _pool = [];
    private readonly List<double[]> _closing = [], _opening = [];
    private readonly List<EventNote> _eventPool = [];
    private readonly List<RunJump> _jumps = [];
    private int _events; // how many of the pool are in use
    private readonly MomentTrace _closingMoments = new(), _openingMoments = new();
    private double[] _splayWeight = [], _padStiffness = [];
    private int _poolUsed;
    private TraceLayout _layout = new([], []);
    private string[] _coordinateNames = [], _peakNames = [], _cordNames = [];
    private double[] _peaks = [], _peakTheta = [], _contactPeak = [];
    private (double Theta, double Force, double Rate)[] _contactBefore = [];
    private bool[] _peakOpening = [];
    private double[] _peakEarlier = [], _peakLast = []; // each force at the last two accepted states
    private double _thetaLast, _thetaEarlierStill;
    private bool _smoothBefore; // whether the path ran on through the last accepted state without a switch
    private bool _allTouched;
    private double _shiftGiveBack;

    /// <summary>Where the path was lost.</summary>
    public RunFailure? Failure { get; private set; }

    private void SetUpTrace()
    {
        List<string> places = ["anchor pin", "input pin", "output pin", "fulcrum", "carriage pin", "rail", "slot", .. _eq.Bars.Select(b => $"bar {b.Name}")];
        for (int f = 0; f < _eq.FingerCount; f++)
        {
            string name = _drive.Fingers[f].Name;
            places.Add($"{name} guide");
            places.AddRange(_eq.Sizes[f] == 1 ? [$"{name} joints"] : [$"{name} mcp", $"{name} pip", $"{name} dip"]);
        }

        _layout = new([.. _drive.Fingers.Select(f => f.Name)], [.. _eq.Bars.Select(b => b.Name)]) { PlaceNames = places };
        List<string> names = ["crank", "slot", "carriage", .. _eq.Bars.Select(b => $"bar {b.Name}")];
        List<string> peaks = ["pull link", "transfer link", "fulcrum", "rail", .. _eq.Bars.Select(b => $"bar {b.Name}"), .. _drive.Fingers.Select(f => $"pull {f.Name}")];
        for (int f = 0; f < _eq.FingerCount; f++)
        {
            string name = _drive.Fingers[f].Name;
            names.AddRange(Enumerable.Repeat(name, _eq.Sizes[f]));
            peaks.AddRange([$"{name} mcp", $"{name} pip", $"{name} dip"]);
        }

        _cordNames = ["pull link", "transfer link", .. _drive.Fingers.Select(f => $"pull {f.Name}")];
        _coordinateNames = [.. names];
        _peakNames = [.. peaks];
        _splayWeight = [.. _drive.Fingers.Select(f => Math.Cos(f.SplayRadians))];
        _padStiffness = [.. _drive.Fingers.Select(f => f.PadStiffness)];
        _peaks = new double[peaks.Count];
        _peakTheta = new double[peaks.Count];
        _peakOpening = new bool[peaks.Count];
        _peakEarlier = new double[peaks.Count];
        _peakLast = new double[peaks.Count];
        _contactPeak = new double[3 * _eq.FingerCount];
        _contactBefore = new (double, double, double)[3 * _eq.FingerCount];
    }

    private void ResetTrace()
    {
        _closing.Clear();
        _opening.Clear();
        _events = 0;
        _jumps.Clear();
        _closingMoments.Clear();
        _openingMoments.Clear();
        _poolUsed = 0;
        Array.Clear(_peaks);
        Array.Clear(_peakTheta);
        Array.Clear(_peakOpening);
        Array.Clear(_peakEarlier);
        Array.Clear(_peakLast);
        _thetaLast = 0;
        _thetaEarlierStill = 0;
        _smoothBefore = false;
        Array.Clear(_contactPeak);
        Array.Clear(_contactBefore);
        _allTouched = false;
        Failure = null;
        _end = null;
        _closedBy = null;
        _lost = 0;
        _work = 0;
        _dissipated = 0;
        _workIn = 0;
        _dissipatedClosing = 0;
        _endMoment = 0;
        _shiftGiveBack = 0;
        _giveState = default;
        _giveTheta = 0;
        _repairs = 0;
        _repairAngle = 0;
    }

    /// <summary>Result of the last run. Rows are the follower's own: copy them to keep them past the next run.</summary>
    public RunResult Result()
    {
        double stored = _closing.Count == 0 ? 0 : _closing[^1][TraceLayout.Stored] - _restStored;
        // Without friction the work is what is stored and lost, exactly; with it, the integral of the moment.
        double workIn = _eq.HasFriction || GimbalDrag > 0 ? _workIn : stored + _lostClosing;
        (double loopMax, double loopTheta) = LargestLoop();
        return new RunResult
        {
            Layout = _layout,
            Closing = _closing,
            Opening = _opening,
            Events = [.. _eventPool.Take(_events).Select(e => new RunEvent(e.Kind, e.Theta, e.Opening, e.Subject, e.Part, e.Value, e.InJump))],
            Jumps = [.. _jumps],
            Peaks = [.. _peakNames.Select((n, i) => new ForcePeak(n, _peaks[i], _peakTheta[i], _peakOpening[i]))],
            End = _closedBy ?? _end ?? RunEnd.NotFollowed,
            Failure = Failure,
            WorkIn = workIn,
            WorkBack = -_workBack,
            DissipatedClosing = _dissipatedClosing,
            DissipatedOpening = _dissipatedOpening,
            LostInJumps = _lostClosing,
            BalanceResidual = _workIn - stored - _dissipatedClosing - _lostClosing,
            LoopMax = loopMax,
            LoopMaxTheta = loopTheta,
            ShiftGiveBack = _shiftGiveBack,
            NewtonSteps = NewtonSteps,
            Factorisations = Factorisations,
        };
    }

    private double _lostClosing;

    private double[] Snapshot()
    {
        double[] row = NextRow();
        Fill(row, false);
        return row;
    }

    private double[] NextRow()
    {
        if (_poolUsed == _pool.Count)
        {
            _pool.Add(new double[_layout.Columns]);
        }

        return _pool[_poolUsed++];
    }

    private void Record(bool output)
    {
        List<double[]> leg = _direction > 0 ? _closing : _opening;
        double[] row = NextRow();
        Fill(row, output);
        leg.Add(row);
        if (_closing.Count == 1 && _direction > 0)
        {
            _restStored = _eq.Stored;
        }

        if (_direction < 0)
        {
            _workBack = _work;
            _dissipatedOpening = _dissipated;
        }
        else
        {
            _lostClosing = _lost;
        }
    }

    private void Fill(double[] row, bool output)
    {
        double tau = _tau;
        double travel = JointTravel(_theta, tau);
        row[TraceLayout.Theta] = _theta;
        row[TraceLayout.Tau] = tau;
        row[TraceLayout.EffortShare] = tau / ((_options.EffortFraction ?? 1) * CapacityAt(travel));
        row[TraceLayout.JointTravel] = travel;
        row[TraceLayout.Phi] = _eq.X[DriveEquations.Phi];
        row[TraceLayout.Shift] = _eq.X[DriveEquations.Shift];
        row[TraceLayout.Carriage] = _eq.X[DriveEquations.Carriage];
        row[TraceLayout.OutputPinRadius] = _eq.OutputRadius;
        row[TraceLayout.OutputArm] = _eq.OutputArm;
        row[TraceLayout.PullLink] = _eq.PullForce;
        row[TraceLayout.TransferLink] = _eq.TransferForce;
        row[TraceLayout.SlotLoad] = _drive.Crank.Slot is null ? 0 : _eq.SlotLoad;
        row[TraceLayout.CarriageForce] = _eq.CarriageForce;
        row[TraceLayout.RailNormal] = Math.Abs(_eq.RailNormal);
        row[TraceLayout.Fulcrum] = _eq.FulcrumLoad.Length;
        row[TraceLayout.Stored] = _eq.Stored;
        row[TraceLayout.ContactEnergy] = _eq.ContactEnergy;
        row[TraceLayout.Work] = _work;
        row[TraceLayout.Dissipated] = _dissipated;
        (row[TraceLayout.StickingPlaces], row[TraceLayout.Sticking]) = Sticking();
        row[TraceLayout.OutputStep] = output ? 1 : 0;
        row[TraceLayout.Stops] = StopBits();
        for (int b = 0; b < _eq.BarCount; b++)
        {
            (double first, double second) = _eq.BarEnds(b);
            row[TraceLayout.Tilt(b)] = _eq.X[3 + b];
            row[TraceLayout.Pivot(b)] = Math.Abs(first + second);
        }

        double grip = 0, x = 0, y = 0;
        for (int f = 0; f < _eq.FingerCount; f++)
        {
            FillFinger(row, f, ref grip, ref x, ref y);
        }

        row[TraceLayout.Grip] = grip;
        row[TraceLayout.ResultantX] = x;
        row[TraceLayout.ResultantY] = y;
    }

    private void FillFinger(double[] row, int f, ref double grip, ref double x, ref double y)
    {
        double weight = _splayWeight[f];
        ReadOnlySpan<double> loads = _eq.JointLoads;
        for (int i = 0; i < 3; i++)
        {
            double force = _eq.ContactForce[f * 3 + i];
            Vector2D push = -force * _eq.Normal(f, i);
            grip += weight * force;
            x += weight * push.X;
            y += weight * push.Y;
            row[_layout.Joint(f, i)] = _eq.Joint[f * 3 + i];
            row[_layout.Contact(f, i)] = force;
            row[_layout.Overlap(f, i)] = _eq.HasObject ? _eq.Overlap[f * 3 + i] : double.NaN;
            row[_layout.Pin(f, i)] = loads[f * 3 + i];
            row[_layout.ContactPointX(f, i)] = _eq.HasObject ? _eq.Closest(f, i).X : double.NaN;
            row[_layout.ContactPointX(f, i) + 1] = _eq.HasObject ? _eq.Closest(f, i).Y : double.NaN;
        }

        row[_layout.LeafTravel(f)] = _eq.LeafTravel[f];
        row[_layout.LeafPull(f)] = _eq.LeafTension[f];
        row[_layout.FingerPull(f)] = _eq.FingerTension[f];
        row[_layout.TipX(f)] = _eq.Tip(f).X;
        row[_layout.TipX(f) + 1] = _eq.Tip(f).Y;
        row[_layout.Locked(f)] = FingerHeld(f) && !_baseFrozen[_eq.Offsets[f]] ? 1 : 0;
    }

    /// <summary>Which places stick, as bits, and how many. A double holds 53 bits: ten fingers' worth.</summary>
    private (double Bits, int Count) Sticking()
    {
        long bits = 0;
        int count = 0;
        for (int i = 0; i < Math.Min(_eq.Places.Length, 53); i++)
        {
            if (_eq.Places[i].Active && _eq.Places[i].Mode == 0)
            {
                bits |= 1L << i;
                count++;
            }
        }

        return (bits, count);
    }

    private double StopBits()
    {
        long bits = 0;
        for (int i = 0; i < Math.Min(_count, 26); i++)
        {
            if (!_eq.Frozen[i] && _bound[i] != 0)
            {
                bits |= 1L << (2 * i + (_bound[i] > 0 ? 1 : 0));
            }
        }

        return bits;
    }

    private void Note(EventKind kind, string subject, int part, double value, bool inJump)
    {
        if (_events == _eventPool.Count)
        {
            _eventPool.Add(new EventNote());
        }

        EventNote note = _eventPool[_events++];
        (note.Kind, note.Theta, note.Opening, note.Subject) = (kind, _theta, _direction < 0, subject);
        (note.Part, note.Value, note.InJump) = (part, value, inJump);
    }

    /// <summary>An event as noted; used again in the next run.</summary>
    private sealed class EventNote
    {
        public EventKind Kind;
        public double Theta, Value;
        public bool Opening, InJump;
        public string Subject = "";
        public int Part;
    }

    private void NoteStop(EventKind kind, int i, int side)
    {
        if (i == DriveEquations.Shift && _direction > 0)
        {
            if (kind == EventKind.StopLeft && side < 0)
            {
                Note(EventKind.ShiftStart, "slot", 0, _eq.SlotLoad, false);
            }
            else if (kind == EventKind.StopReached && side > 0)
            {
                Note(EventKind.ShiftEnd, "slot", 0, _eq.SlotLoad, false);
            }
        }

        int part = 0;
        for (int f = 0; f < _eq.FingerCount; f++)
        {
            part = i >= _eq.Offsets[f] ? i - _eq.Offsets[f] + 1 : part;
        }

        Note(kind, _coordinateNames[i], part, side, false);
    }

    private void NoteContact(int c, bool inJump)
    {
        string finger = _drive.Fingers[c / 3].Name;
        if (_eq.Touching[c])
        {
            Note(EventKind.Touch, finger, c % 3 + 1, 0, inJump);
            _contactPeak[c] = 0;
            NoteAllTouch(inJump);
        }
        else
        {
            Note(EventKind.ContactLost, finger, c % 3 + 1, _contactPeak[c], inJump);
        }
    }

    private void NoteAllTouch(bool inJump)
    {
        if (_allTouched || _direction < 0 || !_eq.HasObject)
        {
            return;
        }

        bool any = false;
        for (int f = 0; f < _eq.FingerCount; f++)
        {
            if (FingerHeld(f))
            {
                continue;
            }

            any = true;
            if (!_eq.Touching[f * 3] && !_eq.Touching[f * 3 + 1] && !_eq.Touching[f * 3 + 2])
            {
                return;
            }
        }

        if (any)
        {
            _allTouched = true;
            Note(EventKind.AllTouch, "fingers", 0, 0, inJump);
        }
    }

    private void NoteSwitchedInJump(double[] before, bool real)
    {
        for (int c = 0; real && c < _eq.Touching.Length; c++)
        {
            bool touched = before[_layout.Contact(c / 3, c % 3)] > 0;
            if (touched != _eq.Touching[c] && _eq.HasObject)
            {
                NoteContact(c, true);
            }
        }
    }

    private void NoteJump(double[] before, double lost, bool byLock)
    {
        double[] after = Snapshot();
        _jumps.Add(new(_theta, _direction < 0, lost, before, after, byLock));
        Record(false);
    }

    private void RefuseOverlap()
    {
        for (int c = 0; _eq.HasObject && c < _eq.Overlap.Length; c++)
        {
            if (_eq.Overlap[c] > 1e-9)
            {
                string finger = _drive.Fingers[c / 3].Name;
                string segment = (c % 3) switch { 0 => "proximal", 1 => "middle", _ => "distal" };
                throw new DriveException(DriveFault.ObjectOverlaps, finger, _eq.Overlap[c],
                    string.Create(System.Globalization.CultureInfo.InvariantCulture, $"The object cuts into the {segment} segment of the open {finger} by {_eq.Overlap[c] * 1000:0.0} mm."));
            }
        }
    }
}

using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Equilibrium;
using Graspwright.Mechanics.Objects;

namespace Graspwright.Mechanics.Run;

/// <summary>Follows the drive's equilibrium as the wrist closes and opens the hand.</summary>
/// <remarks>
/// <para>
/// The path is smooth between events. Each step is predicted along the tangent and corrected by Newton in the modes of
/// the step's start (stops, contacts, cords); if the corrected state contradicts a mode, the first contradiction is
/// located by solving equilibrium and event together for (x, θ), the mode is switched there, and the path goes on.
/// Places that rub follow by return mapping inside the Newton step; where a sliding place would turn back, that point is
/// located too. Where no neighbouring state exists the hand jumps: see <c>.Jumps</c>.
/// </para>
/// <para>Everything is allocated once; <see cref="Run"/> may be called again.</para>
/// </remarks>
internal sealed partial class PathFollower
{
    private const double LargestCorrection = 0.1;   // scaled: rad, or m of LengthScale
    private const double LengthScale = 0.03;         // m that count as much as 1 rad
    private const double SmallestStep = 1e-9;        // rad
    private const int NewtonLimit = 14;
    private const double ForceTolerance = 4e-7, MomentTolerance = 1e-8; // N and N·m of unbalance; Newton leaves far less, as its errors square

    private readonly DriveModel _drive;
    private readonly RunOptions _options;
    private readonly DriveEquations _eq;
    private readonly int _count;
    private readonly int[] _bound;         // −1 at the lower stop, +1 at the upper, 0 free
    private readonly bool[] _held;
    private readonly double[] _scale, _tolerance;
    private readonly double[] _start, _rate, _rateEnd, _step, _side;
    private readonly bool _strung;          // whether a link is under load at rest
    private double _theta;                  // of the last accepted state
    private double _direction = 1;          // +1 closing, −1 opening
    private double _tau, _tauRate;          // at the last accepted state, in the modes that follow it
    private double _residual;
    private double _endMoment;              // τ at the end of closing, for the hysteresis of the give

    /// <summary>Sets a run up.</summary>
    public PathFollower(DriveModel drive, HeldObject held, RunOptions options)
    {
        _drive = drive;
        _options = options;
        _eq = new DriveEquations(drive, held);
        _count = _eq.Count;
        _bound = new int[_count];
        _held = new bool[_count];
        _scale = new double[_count];
        _tolerance = new double[_count];
        _start = new double[_count];
        _rate = new double[_count];
        _rateEnd = new double[_count];
        _step = new double[_count];
        _side = new double[_count];
        _earlier = new double[_count];
        _rateEarlier = new double[_count];
        for (int i = 0; i < _count; i++)
        {
            bool length = i is DriveEquations.Shift or DriveEquations.Carriage;
            _scale[i] = length ? LengthScale : 1;
            _tolerance[i] = length ? ForceTolerance : MomentTolerance;
        }

        _strung = drive.PullLink.Slack < 0 || drive.TransferLink.Slack < 0 || drive.Fingers.Any(f => f.Pull.Slack < 0);
        SetUpWatches();
        SetUpTrace();
    }

    /// <summary>Newton steps taken in the last run.</summary>
    public long NewtonSteps { get; private set; }

    /// <summary>Factorisations in the last run.</summary>
    public long Factorisations { get; private set; }

    /// <summary>Closes and, where asked for, opens the hand.</summary>
    public void Run()
    {
        NewtonSteps = 0;
        Factorisations = 0;
        ResetTrace();
        Rest();
        _direction = 1;
        if (Begin())
        {
            Close();
        }

        if (_options.Opening && Failure is null)
        {
            Open();
        }
    }

    private void Rest()
    {
        Array.Clear(_eq.X);
        _eq.Theta = 0;
        _theta = 0;
        Array.Fill(_eq.Attached, true);
        Array.Clear(_eq.Touching);
        _eq.ModesByValue = false;
        _eq.BoundDerivatives = true;
        _eq.PullTaut = _drive.PullLink.Slack <= 0;
        _eq.TransferTaut = _drive.TransferLink.Slack <= 0;
        foreach (ref RubbingPlace p in _eq.Places.AsSpan())
        {
            p = new RubbingPlace { Active = p.Active, Stiffness = p.Stiffness };
        }

        for (int f = 0; f < _eq.FingerCount; f++)
        {
            _eq.Taut[f] = _drive.Fingers[f].Pull.Slack <= 0;
        }

        for (int i = 0; i < _count; i++)
        {
            _bound[i] = 0;
        }

        ReleaseLocks();
    }

    /// <summary>Finds the equilibrium at θ = 0 and the modes the path leaves it with.</summary>
    private bool Begin()
    {
        for (int i = 0; i < _count; i++)
        {
            bool rests = _eq.Low[i] == 0 && i is not (DriveEquations.Phi or DriveEquations.Carriage);
            _bound[i] = rests ? -1 : 0;
        }

        ApplyLocks(0);
        Hold();
        _eq.Evaluate();
        foreach (ref RubbingPlace p in _eq.Places.AsSpan())
        {
            p.SlideBefore = p.Slide;
        }

        _eq.Evaluate();
        RefuseOverlap();
        (double byTheta, double byPhi) = _eq.PullArms;
        (_armSign[0], _armSign[1]) = (Math.Sign(byTheta), Math.Sign(byPhi));
        if (_strung && !Settle(0))
        {
            Fail("The strung links find no balance at rest.");
            return false;
        }

        AcceptPlaces();
        _eq.X.CopyTo(_start, 0);
        StartPlaces();
        FindRates();
        SettlePlaces(-1);
        SetOut();
        NoteMoment();
        _stride = _options.OutputStepRadians;
        ResetBooks();
        Record(true);
        return true;
    }

    private void Close()
    {
        double output = _options.OutputStepRadians;
        for (int k = 1; Failure is null && _end is null; k++)
        {
            double next = k * output;
            double lockAt = NextLock(_theta);
            if (lockAt < next)
            {
                next = lockAt;
                k--;
            }

            if (!Advance(next) || _end is not null)
            {
                break;
            }

            bool isLock = next == lockAt;
            if (isLock && !ActLocks(next))
            {
                break;
            }

            if (!isLock || next >= (k + 1) * output)
            {
                Record(true);
            }
        }

        FinishClosing();
    }

    private void Open()
    {
        BeginOpening();
        double output = _options.OutputStepRadians;
        int k = (int)Math.Ceiling(_theta / output - 1e-9) - 1;
        for (; k >= 0; k--)
        {
            if (!Advance(k * output))
            {
                return;
            }

            Record(true);
        }
    }

    /// <summary>Moves to a wrist angle, through every event on the way.</summary>
    private bool Advance(double target)
    {
        while (_end is null && Math.Abs(target - _theta) > 1e-13)
        {
            double left = Math.Abs(target - _theta);
            double stride = Math.Min(_stride, left);
            double end = left - stride < 1e-9 ? target : _theta + _direction * stride;
            Outcome outcome = TryStep(end);
            if (_direction < 0 && _theta < RestAngle)
            {
                return true; // back at rest: what is left is the noise of the stops
            }

            if (outcome == Outcome.Failed)
            {
                return false;
            }

            if (outcome == Outcome.Landed)
            {
                _stride = Math.Min(2 * Math.Max(stride, _stride), _options.OutputStepRadians);
                continue;
            }

            _stride = outcome == Outcome.Unbalanced ? 0.5 * _tried : 0.25 * stride;
            if (_stride < SmallestStep && !Jump())
            {
                return false;
            }
        }

        return Failure is null;
    }

    private enum Outcome
    {
        Landed,
        Unbalanced,
        NotReached,
        Failed,
    }

    private const double RestAngle = 1e-9;       // rad
    private const double FinestBalance = 2e-5; // rad; below it the energy books are not refined further
    private double _stride;

    private void Hold()
    {
        for (int i = 0; i < _count; i++)
        {
            _held[i] = _eq.Frozen[i] || _bound[i] != 0;
        }
    }

    private void RestoreStart()
    {
        _start.CopyTo(_eq.X, 0);
        _eq.Theta = _theta;
    }

    private void AcceptPlaces()
    {
        foreach (ref RubbingPlace p in _eq.Places.AsSpan())
        {
            p.Accept();
        }
    }

    /// <summary>Evaluates the accepted state again in the modes that the path leaves it with, and finds the tangent.</summary>
    private void LeaveState()
    {
        FindRates();
        SetOut();
    }

    /// <summary>Rates of the unknowns and of what rubs, in the present modes, at the accepted state.</summary>
    private void FindRates()
    {
        Hold();
        _eq.Theta = _theta;
        _eq.Evaluate();
        Factor();
        Tangent(_rate);
        if (_eq.HasFriction)
        {
            _eq.RubRates(_rate, _rub);
        }
    }

    /// <summary>The path leaves the accepted state with the rates just found.</summary>
    private void SetOut()
    {
        _smooth = false;
        _tau = Moment();
        _tauRate = MomentRate(_rate);
        NoteNewSlope();
        RememberWatches();
    }

    /// <summary>At rest: what carries nothing yet slides the way the drive sets out; what drags from the start sticks.</summary>
    private void StartPlaces()
    {
        foreach (ref RubbingPlace p in _eq.Places.AsSpan())
        {
            p.Mode = p.High > RubbingPlace.NoLoad * p.Stiffness ? 0 : 1;
        }

        Hold();
        _eq.Evaluate();
        Factor();
        Tangent(_rate);
        for (int i = 0; i < _eq.Places.Length; i++)
        {
            ref RubbingPlace p = ref _eq.Places[i];
            p.Mode = p.Mode == 0 ? 0 : _eq.SlideRate(i, _rate, 1) >= 0 ? 1 : -1;
        }
    }

    private void Fail(string reason)
    {
        Failure = new RunFailure(_theta, _direction < 0, _residual, reason);
        _end ??= RunEnd.NotFollowed;
    }
}

namespace Graspwright.Moulding.Heat;

/// <summary>A body that heat flows through, in cells; its surroundings may change from phase to phase.</summary>
/// <remarks>
/// Finite volumes: what leaves one cell enters the next, so that heat is kept exactly. Trapezium rule in time, begun with
/// four quarter steps backward in time at each change of surroundings, which damps what the sudden change excites
/// (Rannacher's start). Checked against <see cref="RobinSeries"/>.
/// </remarks>
public sealed class HeatedBody
{
    private readonly double[] _volumes, _links, _upper, _pivots, _right, _temperatures;
    private readonly double _innerArea, _outerArea, _halfCell;
    private readonly HeatedStuff _stuff;
    private (Surroundings Around, double Step, double Weight) _factored;

    /// <summary>A body at one temperature.</summary>
    /// <param name="shape">Shape.</param>
    /// <param name="length">Thickness of a slab, radius of cylinder or sphere [m], above 0.</param>
    /// <param name="stuff">What it is made of.</param>
    /// <param name="temperature">Its temperature [K].</param>
    /// <param name="cells">Number of cells, 4 or more.</param>
    public HeatedBody(BodyShape shape, double length, HeatedStuff stuff, double temperature, int cells = 32)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(length);
        ArgumentOutOfRangeException.ThrowIfLessThan(cells, 4);
        _stuff = stuff;
        int power = shape switch { BodyShape.Slab => 0, BodyShape.Cylinder => 1, _ => 2 };
        double width = length / cells;
        _halfCell = width / 2;
        _volumes = new double[cells];
        _links = new double[cells + 1];
        _upper = new double[cells];
        _pivots = new double[cells];
        _right = new double[cells];
        _temperatures = new double[cells];
        for (int i = 0; i < cells; i++)
        {
            double low = i * width, high = (i + 1) * width;
            _volumes[i] = (Power(high, power + 1) - Power(low, power + 1)) / (power + 1);
            _links[i] = i == 0 ? 0 : stuff.Conductivity * Power(low, power) / width;
            _temperatures[i] = temperature;
        }

        _innerArea = shape == BodyShape.Slab ? 1 : 0;
        _outerArea = Power(length, power);
    }

    /// <summary>Temperatures of the cells, from the inner side [K].</summary>
    public ReadOnlySpan<double> Temperatures => _temperatures;

    /// <summary>Mean temperature over the volume [K].</summary>
    public double Mean
    {
        get
        {
            double heat = 0, volume = 0;
            for (int i = 0; i < _volumes.Length; i++)
            {
                heat += _volumes[i] * _temperatures[i];
                volume += _volumes[i];
            }

            return heat / volume;
        }
    }

    /// <summary>Heat that has come in through the surfaces since the start, for the area that the shape counts with [J].</summary>
    public double HeatIn { get; private set; }

    /// <summary>Heat that the body holds above 0 K, on the same footing [J].</summary>
    public double HeatHeld
    {
        get
        {
            double heat = 0;
            for (int i = 0; i < _volumes.Length; i++)
            {
                heat += _volumes[i] * _temperatures[i] * _stuff.HeatCapacity;
            }

            return heat;
        }
    }

    /// <summary>Temperature of the outer surface [K].</summary>
    /// <param name="around">What touches it.</param>
    public double OuterSurface(in Surroundings around) => Surface(_temperatures[^1], around.OuterTransfer, around.OuterTemperature);

    /// <summary>Temperature of a slab's inner surface [K].</summary>
    /// <param name="around">What touches it.</param>
    public double InnerSurface(in Surroundings around) => Surface(_temperatures[0], around.InnerTransfer, around.InnerTemperature);

    /// <summary>Goes on in time.</summary>
    /// <param name="around">What touches the body meanwhile.</param>
    /// <param name="seconds">How long [s], 0 or more.</param>
    /// <param name="steps">In how many equal steps, 1 or more.</param>
    public void Advance(in Surroundings around, double seconds, int steps)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(seconds);
        ArgumentOutOfRangeException.ThrowIfLessThan(steps, 1);
        double step = seconds / steps;
        Begin(around, step);
        for (int i = 1; i < steps; i++)
        {
            Step(around, step);
        }
    }

    /// <summary>The first step after a change of surroundings, in four quarters.</summary>
    /// <param name="around">What touches the body.</param>
    /// <param name="step">Length of the whole step [s].</param>
    public void Begin(in Surroundings around, double step)
    {
        for (int i = 0; i < 4; i++)
        {
            Solve(around, step / 4, 1);
        }
    }

    /// <summary>A further step in the same surroundings.</summary>
    /// <param name="around">What touches the body.</param>
    /// <param name="step">Length of the step [s].</param>
    public void Step(in Surroundings around, double step) => Solve(around, step, 0.5);

    private void Solve(in Surroundings around, double step, double weight)
    {
        if (step <= 0)
        {
            return;
        }

        int last = _temperatures.Length - 1;
        double inner = _innerArea * Through(around.InnerTransfer), outer = _outerArea * Through(around.OuterTransfer);
        if (_factored != (around, step, weight))
        {
            Factor(step * weight, inner, outer);
            _factored = (around, step, weight);
        }

        double explicitPart = step * (1 - weight), implicitPart = step * weight;
        double innerFlow = explicitPart * inner * (around.InnerTemperature - _temperatures[0]);
        double outerFlow = explicitPart * outer * (around.OuterTemperature - _temperatures[last]);
        for (int i = 0; i <= last; i++)
        {
            double flow = (i > 0 ? _links[i] * (_temperatures[i - 1] - _temperatures[i]) : 0) + (i < last ? _links[i + 1] * (_temperatures[i + 1] - _temperatures[i]) : 0);
            _right[i] = _volumes[i] * _stuff.HeatCapacity * _temperatures[i] + explicitPart * flow;
        }

        _right[0] += innerFlow + implicitPart * inner * around.InnerTemperature;
        _right[last] += outerFlow + implicitPart * outer * around.OuterTemperature;
        for (int i = 0; i <= last; i++)
        {
            double below = i > 0 ? implicitPart * _links[i] * _right[i - 1] : 0;
            _right[i] = (_right[i] + below) * _pivots[i];
        }

        for (int i = last; i >= 0; i--)
        {
            _temperatures[i] = _right[i] + (i < last ? _upper[i] * _temperatures[i + 1] : 0);
        }

        HeatIn += innerFlow + outerFlow + implicitPart * (inner * (around.InnerTemperature - _temperatures[0]) + outer * (around.OuterTemperature - _temperatures[last]));
    }

    private void Factor(double implicitPart, double inner, double outer)
    {
        int last = _temperatures.Length - 1;
        for (int i = 0; i <= last; i++)
        {
            double diagonal = _volumes[i] * _stuff.HeatCapacity + implicitPart * (_links[i] + (i < last ? _links[i + 1] : 0) + (i == 0 ? inner : 0) + (i == last ? outer : 0));
            double pivot = diagonal - (i > 0 ? implicitPart * _links[i] * _upper[i - 1] : 0);
            _pivots[i] = 1 / pivot;
            _upper[i] = i < last ? implicitPart * _links[i + 1] / pivot : 0;
        }
    }

    // From the middle of the last cell through half a cell and the surface.
    private double Through(double transfer) => transfer <= 0 ? 0 : 1 / (1 / transfer + _halfCell / _stuff.Conductivity);

    private double Surface(double cell, double transfer, double beyond)
    {
        double inside = _stuff.Conductivity / _halfCell;
        return (inside * cell + transfer * beyond) / (inside + transfer);
    }

    private static double Power(double x, int n) => n switch { 0 => 1, 1 => x, 2 => x * x, _ => x * x * x };
}

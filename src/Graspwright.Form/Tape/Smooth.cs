namespace Graspwright.Form.Tape;

/// <summary>A smooth curve through marks that makes no bump of its own (Fritsch and Carlson 1980).</summary>
internal sealed class Smooth
{
    private readonly double[] _x, _y, _slope;

    public Smooth(double[] x, double[] y)
    {
        (_x, _y, _slope) = (x, y, new double[x.Length]);
        int n = x.Length;
        double[] rise = new double[n - 1];
        for (int i = 0; i + 1 < n; i++)
        {
            rise[i] = (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
        }

        (_slope[0], _slope[^1]) = (rise[0], rise[^1]);
        for (int i = 1; i + 1 < n; i++)
        {
            double a = x[i] - x[i - 1], b = x[i + 1] - x[i];
            _slope[i] = rise[i - 1] * rise[i] <= 0 ? 0 : 3 * (a + b) / ((2 * b + a) / rise[i - 1] + (b + 2 * a) / rise[i]);
        }
    }

    public double At(double x)
    {
        int i = Array.BinarySearch(_x, x);
        if (i >= 0)
        {
            return _y[i];
        }

        i = ~i;
        if (i == 0 || i == _x.Length)
        {
            return _y[i == 0 ? 0 : ^1];
        }

        double h = _x[i] - _x[i - 1], t = (x - _x[i - 1]) / h, u = 1 - t;
        return (1 + 2 * t) * u * u * _y[i - 1] + t * u * u * h * _slope[i - 1] + t * t * (3 - 2 * t) * _y[i] - t * t * u * h * _slope[i];
    }
}

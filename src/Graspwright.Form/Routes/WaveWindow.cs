namespace Graspwright.Form.Routes;

/// <summary>A stretch of a side that sees a source in the unfolded plane below it: its distance at x is Before + √((x − X)² + Y²).</summary>
internal struct WaveWindow
{
    /// <summary>Where it begins on the side [m].</summary>
    public double Low;

    /// <summary>Where it ends [m].</summary>
    public double High;

    /// <summary>The source along the side [m].</summary>
    public double X;

    /// <summary>The source across the side, at most 0 [m].</summary>
    public double Y;

    /// <summary>What is added to the distance from the source [m].</summary>
    public double Before;

    /// <summary>Distance at its beginning [m].</summary>
    public double AtLow;

    /// <summary>Distance at its end [m].</summary>
    public double AtHigh;

    /// <summary>How far its distances may be off, either way [m].</summary>
    public double Error;

    /// <summary>The error that was reckoned with when it was carried on, its own or a neighbour's [m].</summary>
    public double Told;

    /// <summary>The next window of the side; −1 = none.</summary>
    public int Next;

    /// <summary>Whether it has still to be carried over the triangle.</summary>
    public bool Pending;

    /// <summary>Distance at a place of the side [m].</summary>
    /// <param name="x">The place [m].</param>
    public readonly double At(double x)
    {
        double d = x - X;
        return Before + Math.Sqrt(d * d + Y * Y);
    }

    /// <summary>Least distance on the window [m].</summary>
    public readonly double Nearest => X <= Low ? AtLow : X >= High ? AtHigh : Before - Y;

    /// <summary>The same wave on another stretch.</summary>
    /// <param name="low">Where that begins [m].</param>
    /// <param name="high">Where it ends [m].</param>
    public readonly WaveWindow On(double low, double high)
    {
        WaveWindow w = this;
        if (low != Low)
        {
            (w.Low, w.AtLow) = (low, At(low));
        }

        if (high != High)
        {
            (w.High, w.AtHigh) = (high, At(high));
        }

        return w;
    }
}

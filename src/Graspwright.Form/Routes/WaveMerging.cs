namespace Graspwright.Form.Routes;

/// <summary>Neighbouring windows of a side taken for one, where that is off by little enough.</summary>
/// <remarks>
/// The one window has the distances of the outer ends of those that it stands for, and its outermost lines lie on theirs or beyond: whatever
/// they saw, it sees. How far it is off is found without sampling: the difference of two waves along the side has its extremes at the ends and
/// where the line through both sources meets the side.
/// </remarks>
internal static class WaveMerging
{
    private const double Flat = 1e3; // source of a wave that does not spread: so many times its distance away

    /// <summary>Tries to make one window of some.</summary>
    /// <param name="parts">The windows, in order, each beginning where the one before ends.</param>
    /// <param name="share">Error allowed as a share of the distance.</param>
    /// <param name="one">The one window.</param>
    public static bool Try(ReadOnlySpan<WaveWindow> parts, double share, out WaveWindow one)
    {
        ref readonly WaveWindow first = ref parts[0], last = ref parts[^1];
        double low = first.Low, high = last.High, width = high - low, rise = last.AtHigh - first.AtLow;
        one = last;
        if (!(Math.Abs(rise) < width))
        {
            return false;
        }

        // slopes at the ends: cosines of the lines that arrive there
        double cosLow = Slope(in first, low, first.AtLow), cosHigh = Slope(in last, high, last.AtHigh), square = width * width - rise * rise;
        double far = Flat * Math.Max(first.AtLow, width), t = far, cos = (rise - square / (2 * far)) / width;
        bool fromLow = true;
        if (rise > width * cosLow)
        {
            double s = square / (2 * (rise - width * cosLow));
            (t, cos) = s < far ? (s, cosLow) : (t, cos);
        }

        if (width * cosHigh > rise)
        {
            double s = square / (2 * (width * cosHigh - rise));
            // the nearer source spreads more
            if (s < far && (width + t * cos) / (rise + t) < cosHigh)
            {
                (t, cos, fromLow) = (s, cosHigh, false);
            }
        }

        double sin = Math.Sqrt(Math.Max(0, 1 - cos * cos)), start = fromLow ? low : high, at = fromLow ? first.AtLow : last.AtHigh;
        one.Low = low;
        one.High = high;
        one.X = start - t * cos;
        one.Y = -t * sin;
        one.Before = at - t;
        one.AtLow = one.At(low);
        one.AtHigh = one.At(high);
        one.Pending = true;
        double error = 0, allowed = share * one.Nearest;
        foreach (ref readonly WaveWindow w in parts)
        {
            double off = Math.Max(Math.Abs(one.At(w.Low) - w.AtLow), Math.Abs(one.At(w.High) - w.AtHigh)), turn = one.X - one.Y * (w.X - one.X) / (w.Y - one.Y);
            if (turn > w.Low && turn < w.High)
            {
                off = Math.Max(off, Math.Abs(one.At(turn) - w.At(turn)));
            }

            error = Math.Max(error, w.Error + off);
            if (!(error <= allowed))
            {
                return false;
            }
        }

        one.Error = error;
        return true;
    }

    private static double Slope(ref readonly WaveWindow w, double x, double at) => at - w.Before is > 0 and var r ? (x - w.X) / r : 0;
}

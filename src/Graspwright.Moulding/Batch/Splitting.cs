namespace Graspwright.Moulding.Batch;

/// <summary>How long the maker takes; areas in m², lengths in m, times in s.</summary>
/// <param name="Mix">Mixing, whatever the size.</param>
/// <param name="RollRate">Rolling out, per m².</param>
/// <param name="DrapeRate">Draping, per m².</param>
/// <param name="SeamRate">Seams, per m.</param>
/// <param name="Hollow">Pressing into one hollow.</param>
/// <param name="SmoothRate">Smoothing, per m².</param>
public readonly record struct WorkRates(double Mix, double RollRate, double DrapeRate, double SeamRate, double Hollow, double SmoothRate);

/// <summary>A step of the work with its time.</summary>
/// <param name="Name">Name of the step.</param>
/// <param name="Start">Start, from the start of mixing [s].</param>
/// <param name="End">End [s].</param>
public readonly record struct WorkStep(string Name, double Start, double End)
{
    /// <summary>Length [s].</summary>
    public double Seconds => End - Start;
}

/// <summary>The work on one batch.</summary>
public static class Splitting
{
    /// <summary>Steps of one batch, one after the other.</summary>
    /// <param name="rates">How long the maker takes.</param>
    /// <param name="area">Area of this batch [m²].</param>
    /// <param name="seam">Length of its seams [m].</param>
    /// <param name="hollows">Hollows in it.</param>
    /// <param name="hands">Pairs of hands; rolling, draping, seams, hollows and smoothing are shared, mixing is not.</param>
    public static IReadOnlyList<WorkStep> Steps(WorkRates rates, double area, double seam, int hollows, int hands = 1)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(hands, 1);
        (string, double)[] lengths =
        [
            ("mix", rates.Mix), ("roll", rates.RollRate * area / hands), ("drape", rates.DrapeRate * area / hands),
            ("seams", rates.SeamRate * seam / hands), ("hollows", rates.Hollow * hollows / hands), ("smooth", rates.SmoothRate * area / hands),
        ];
        List<WorkStep> steps = [];
        double at = 0;
        foreach ((string name, double seconds) in lengths)
        {
            steps.Add(new(name, at, at + seconds));
            at += seconds;
        }

        return steps;
    }

    /// <summary>Places that cut a run of widths into pieces of equal area.</summary>
    /// <param name="places">Places along, rising [m].</param>
    /// <param name="widths">Width at each place [m], straight in between.</param>
    /// <param name="pieces">Number of pieces, 1 or more.</param>
    /// <returns>The places of the cuts, one less than the pieces.</returns>
    public static IReadOnlyList<double> EqualAreas(IReadOnlyList<double> places, IReadOnlyList<double> widths, int pieces)
    {
        ArgumentNullException.ThrowIfNull(places);
        ArgumentNullException.ThrowIfNull(widths);
        ArgumentOutOfRangeException.ThrowIfLessThan(pieces, 1);
        double total = 0;
        for (int i = 1; i < places.Count; i++)
        {
            total += Area(i);
        }

        List<double> cuts = [];
        double before = 0;
        int next = 1;
        for (int i = 1; i < places.Count; i++)
        {
            double here = Area(i);
            while (next < pieces && before + here >= total * next / pieces)
            {
                cuts.Add(places[i - 1] + Along(widths[i - 1], (widths[i] - widths[i - 1]) / (places[i] - places[i - 1]), total * next / pieces - before));
                next++;
            }

            before += here;
        }

        return cuts;

        double Area(int i) => (places[i] - places[i - 1]) * (widths[i] + widths[i - 1]) / 2;
    }

    // Solves w·s + slope·s²/2 = area for s.
    private static double Along(double width, double slope, double area) =>
        2 * area / (width + Math.Sqrt(Math.Max(0, width * width + 2 * slope * area)));
}

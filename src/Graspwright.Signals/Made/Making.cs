using Graspwright.Signals.Filters;
using Graspwright.Signals.Recordings;
using Graspwright.Signals.Sites;

namespace Graspwright.Signals.Made;

/// <summary>Makes recordings of a scene: bursts of shaped noise for muscles, cross-talk by distance, hum, motion, lift-off.</summary>
/// <remarks>A muscle's noise is one and the same at every pair that sees it, as it is under skin; so neighbours scatter together.</remarks>
public static class Making
{
    private const double RampSeconds = 0.12, LateSeconds = 0.15;

    /// <summary>Makes the recording.</summary>
    /// <param name="scene">Scene.</param>
    public static Recording Of(Scene scene)
    {
        ArgumentNullException.ThrowIfNull(scene);
        double seconds = scene.Marks[^1].EndSeconds, inner = scene.Envelope ? 1000 : scene.RateHertz;
        int count = (int)Math.Round(seconds * inner);
        double[][] muscles = [.. scene.Muscles.Select((m, i) => Burst(scene, m, i, count, inner))];
        double[][] signals = [.. scene.Sites.Select((s, i) => AtSite(scene, s, i, muscles, count, inner))];
        return new(scene.RateHertz, [.. scene.Sites.Select((s, i) => ToChannel(scene, s.Name, signals[i], inner))], scene.Marks);
    }

    /// <summary>How strongly a pair sees a muscle: by distance, and along the fibre more than across it.</summary>
    /// <param name="scene">Scene.</param>
    /// <param name="site">Pair.</param>
    /// <param name="muscle">Muscle; its fibres run along +y.</param>
    public static double Coupling(Scene scene, Site site, Muscle muscle)
    {
        ArgumentNullException.ThrowIfNull(scene);
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(muscle);
        double distance = double.Hypot(site.XMm - muscle.XMm, 0.5 * (site.YMm - muscle.YMm));
        double along = Math.Abs(Math.Sin(site.DirectionDegrees * Math.PI / 180));
        return Math.Exp(-distance / scene.FallMm) * (0.3 + 0.7 * along) * Math.Min(1, site.SpacingMm / 20);
    }

    private static double[] Burst(Scene scene, Muscle muscle, int index, int count, double rate)
    {
        Chance chance = new(scene.Seed * 1000003 + (ulong)index + 1);
        double high = Math.Min(150, 0.4 * rate), low = Math.Min(45, high / 2);
        Filtering shape = new(Butterworth.BandPass(1, low, high, rate));
        double[] noise = new double[count];
        double square = 0;
        for (int i = 0; i < count; i++)
        {
            noise[i] = chance.Normal();
        }

        shape.Run(noise.AsSpan());
        foreach (double v in noise)
        {
            square += v * v / count;
        }

        double scale = muscle.Volts / Math.Sqrt(square);
        double[] effort = new double[count];
        foreach (Mark mark in scene.Marks.Where(m => m.Gesture == muscle.Gesture || m.Meanwhile == muscle.Gesture))
        {
            double strength = 0.85 + 0.3 * chance.Even(), late = LateSeconds + 0.1 * chance.Even();
            int from = Math.Max(0, (int)((mark.StartSeconds + late) * rate)), to = Math.Min(count, (int)(mark.EndSeconds * rate));
            for (int i = from; i < to; i++)
            {
                double rise = Math.Min(1, (i - from) / (RampSeconds * rate)), fall = Math.Min(1, (to - i) / (RampSeconds * rate));
                effort[i] = strength * Math.Min(rise, fall);
            }
        }

        for (int i = 0; i < count; i++)
        {
            noise[i] *= scale * effort[i];
        }

        return noise;
    }

    private static double[] AtSite(Scene scene, Site site, int index, double[][] muscles, int count, double rate)
    {
        Chance chance = new(scene.Seed * 7919 + (ulong)index * 104729 + 17);
        double[] values = new double[count];
        for (int m = 0; m < muscles.Length; m++)
        {
            double coupling = Coupling(scene, site, scene.Muscles[m]);
            for (int i = 0; i < count; i++)
            {
                values[i] += coupling * muscles[m][i];
            }
        }

        double phase = 2 * Math.PI * chance.Even(), wander = 0, shake = 0;
        for (int i = 0; i < count; i++)
        {
            double t = i / rate, turn = 2 * Math.PI * scene.MainsHertz * t + phase;
            bool lifted = Within(scene.Lifted, site.Name, t), shaken = Within(scene.Shaken, site.Name, t);
            wander = 0.9995 * wander + 0.4e-6 * chance.Normal();
            shake = 0.985 * shake + (shaken ? 45e-6 * chance.Normal() : 0);
            double noise = scene.Noise * chance.Normal() * (1 + scene.DriftPerHour * t / 3600);
            double hum = scene.Hum * (Math.Sin(turn) + 0.2 * Math.Sin(3 * turn));
            values[i] = lifted ? 60 * scene.Hum * (Math.Sin(turn) + 0.3 * Math.Sin(2 * turn)) + 10 * noise : values[i] + noise + hum + wander + shake;
        }

        if (scene.Envelope)
        {
            FrontEnd.Usual(rate, isRaw: true, scene.MainsHertz).Run([values]);
        }

        return values;
    }

    private static Channel ToChannel(Scene scene, string name, double[] values, double inner)
    {
        double step = inner / scene.RateHertz;
        float[] counts = new float[(int)(values.Length / step)];
        for (int i = 0; i < counts.Length; i++)
        {
            counts[i] = (float)Math.Clamp(Math.Round(values[(int)(i * step)] / scene.VoltsPerCount), -scene.GreatestCount - 1, scene.GreatestCount);
        }

        return new(name, "V", counts, scene.VoltsPerCount) { LeastCount = -scene.GreatestCount - 1, GreatestCount = scene.GreatestCount };
    }

    private static bool Within(IReadOnlyList<Trouble> troubles, string site, double t)
    {
        foreach (Trouble trouble in troubles)
        {
            if (trouble.Site == site && t >= trouble.StartSeconds && t < trouble.EndSeconds)
            {
                return true;
            }
        }

        return false;
    }
}

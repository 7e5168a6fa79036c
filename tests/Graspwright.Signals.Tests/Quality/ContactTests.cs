using Graspwright.Signals.Made;
using Graspwright.Signals.Quality;
using Graspwright.Signals.Recordings;
using Graspwright.Signals.Tests.Made;

namespace Graspwright.Signals.Tests.Quality;

public sealed class ContactTests
{
    [Theory]
    [InlineData(15e-6)]
    [InlineData(400e-6)]
    public void Finds_lift_off_and_return_under_weak_and_strong_hum(double hum)
    {
        Recording recording = Making.Of(Scenes.Four() with { Hum = hum, Lifted = [new("hollow", 12.3, 16.8)], GreatestCount = 8_000_000 });
        IReadOnlyList<ContactReading> readings = ContactJudging.Judge(recording, SignalKind.Raw, 50, new());

        Assert.Equal([ContactVerdict.Connected, ContactVerdict.Loose, ContactVerdict.Connected, ContactVerdict.Connected], readings.Select(r => r.Verdict));
        Stretch lifted = Assert.Single(readings[1].Stretches, s => s.State == ContactState.Lifted);
        double window = readings[1].WindowSeconds;
        Assert.InRange(lifted.StartSeconds, 12.3 - 2 * window, 12.3 + window);
        Assert.InRange(lifted.EndSeconds, 16.8 - window, 16.8 + window);
        Assert.Contains("lifted off 1 time", readings[1].Evidence, StringComparison.Ordinal);
        Assert.Equal(hum * Math.Sqrt(0.5 * (1 + 0.04)), readings[0].Hum, 0.1 * hum); // the made hum, two lines of it
        Assert.Equal(8e-6 * Math.Sqrt(430.0 / 500), readings[0].NoiseFloor, 0.2 * 8e-6); // the made noise in 20 to 450 of 500 Hz
    }

    [Fact]
    public void Finds_channels_that_are_flat_at_the_end_never_touching_and_shaken()
    {
        Recording made = Making.Of(Scenes.Four() with { Shaken = [new("rim", 5, 11)] });
        float[] end = [.. Enumerable.Repeat(32767f, made.Length)];
        Recording recording = made with
        {
            Channels =
            [
                made.Channels[0] with { Name = "flat", Counts = new float[made.Length] },
                made.Channels[0] with { Name = "end", Counts = end },
                Making.Of(Scenes.Four() with { Lifted = [new("ridge", 0, 99)] }).Channels[0] with { Name = "never" },
                made.Channels[3],
            ],
        };
        IReadOnlyList<ContactReading> readings = ContactJudging.Judge(recording, SignalKind.Raw, 50, new());
        Assert.Equal([0, 0, 0], readings.Take(3).Select(r => r.UsableShare));
        Assert.Contains("never moves", readings[0].Evidence, StringComparison.Ordinal);
        Assert.All(readings[1].States, s => Assert.NotEqual(ContactState.Usable, s));
        Assert.Contains("hum is stronger", readings[2].Evidence, StringComparison.Ordinal);
        Assert.Contains("drowned by motion", readings[3].Evidence, StringComparison.Ordinal);
        Assert.InRange(readings[3].UsableShare, 0.80, 0.95);
    }

    [Fact]
    public void Counts_clipping_and_missing_samples()
    {
        Recording made = Making.Of(Scenes.Four() with { GreatestCount = 120 });
        ContactReading clipped = ContactJudging.Judge(made, SignalKind.Raw, 50, new())[0];
        Assert.Contains("at the converter's end", clipped.Evidence, StringComparison.Ordinal);
        Recording holed = Making.Of(Scenes.Four()) with { Gaps = [new(3000, 600)] };
        Assert.Contains(ContactState.Missing, ContactJudging.Judge(holed, SignalKind.Raw, 50, new())[0].States);
    }

    [Fact]
    public void Says_how_much_is_usable_at_each_gesture_and_meanwhile()
    {
        Mark[] marks = [.. Scenes.Turns(4).Select((m, i) => i % 2 == 1 && m.Gesture == "thumb" ? m with { Label = "thumb/arm overhead" } : m)];
        Recording recording = Making.Of(Scenes.Four() with { Marks = [.. marks.Select(m => m with { Label = m.Gesture })], Lifted = [new("ridge", 6, 7.5)] }) with { Marks = marks };
        ContactReading reading = ContactJudging.Judge(recording, SignalKind.Raw, 50, new())[0];
        UsableDuring overhead = Assert.Single(reading.During, d => d.Meanwhile == "arm overhead");
        Assert.True(overhead.UsableShare < reading.During.Single(d => d.Gesture == "fist").UsableShare);
    }

    [Fact]
    public void Tells_raw_from_envelope_even_under_hum_and_asks_when_nothing_is_tensed()
    {
        Recording raw = Making.Of(Scenes.Four() with { Hum = 400e-6, Shaken = [new("ridge", 5, 11)] }), smooth = Making.Of(Scenes.Four() with { Envelope = true, RateHertz = 200 });
        Assert.All(raw.Channels, c => Assert.Equal(SignalKind.Raw, KindOfSignal.Of(c, raw.RateHertz, 50).Kind));
        Assert.All(smooth.Channels, c => Assert.Equal(SignalKind.Envelope, KindOfSignal.Of(c, smooth.RateHertz, 50).Kind));
        Recording idle = Making.Of(Scenes.Four() with { Marks = [new(0, 30, "rest")] });
        Assert.Equal(SignalKind.Unclear, KindOfSignal.Of(idle.Channels[0], idle.RateHertz, 50).Kind);
    }

    /// <summary>The rows of the notebook of detecta (M. Duarte, MIT): threshold 1.</summary>
    [Fact]
    public void Onsets_are_those_of_the_published_example()
    {
        double[] x = [0, 0, 2, 0, double.NaN, 0, 2, 3, 3, 0, 1, 1, 0];
        Assert.Equal([(2, 2), (6, 8), (10, 11)], Onsets.Above(x, 1));
        Assert.Equal([(6, 8), (10, 11)], Onsets.Above(x, 1, least: 2));
        Assert.Equal([(6, 11)], Onsets.Above(x, 1, least: 2, bridge: 1));
    }

    [Fact]
    public void Finds_made_onsets_within_a_few_hundredths_of_a_second()
    {
        Scene scene = Scenes.Four();
        scene = scene with { Muscles = [scene.Muscles[0]] };
        Recording recording = Making.Of(scene);
        double[] envelope = recording.Channels[0].Values();
        Signals.Filters.FrontEnd front = Signals.Filters.FrontEnd.Usual(recording.RateHertz, isRaw: true, 50);
        front.Run([envelope]);
        double level = Onsets.Level(envelope.AsSpan(3000, 7800), 3);
        IReadOnlyList<(int First, int Last)> found = Onsets.Above(envelope, level, least: 300, bridge: 200);
        Mark[] fists = [.. scene.Marks.Where(m => m.Gesture == "fist")];
        Assert.Equal(fists.Length, found.Count);
        // The made wearer follows a cue after 0.15 to 0.25 s; the smoothing takes 0.04 s more.
        Assert.All(fists.Zip(found), p => Assert.InRange(p.Second.First / recording.RateHertz - p.First.StartSeconds, 0.15, 0.25 + 2 * front.DelaySeconds));
    }

    /// <summary>Wilson's interval at 8 of 10, as many books print it: 0.490 to 0.943.</summary>
    [Fact]
    public void The_interval_of_a_share_is_that_of_the_books()
    {
        (double low, double high) = Statistics.Interval(0.8, 10);
        Assert.Equal(0.490, low, 5e-4);
        Assert.Equal(0.943, high, 5e-4);
    }
}

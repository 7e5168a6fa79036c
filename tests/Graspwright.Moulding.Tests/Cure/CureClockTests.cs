using CsCheck;
using Graspwright.Moulding.Cure;
using Graspwright.Moulding.Heat;

namespace Graspwright.Moulding.Tests.Cure;

public sealed class CureClockTests
{
    private const double Zero = 273.15;

    /// <summary>Everything at the label's temperature.</summary>
    private static CureInputs AtLabel { get; } = new()
    {
        WorkTime = 200,
        SetTime = 700,
        LabelTemperature = 23 + Zero,
        Conductivity = 0.25,
        SpecificHeat = 1300,
        Density = 1200,
        Mass = 0.2,
        Thickness = 0.003,
        Room = 23 + Zero,
        Mould = 23 + Zero,
        Hand = 23 + Zero,
        Freezer = -18 + Zero,
        AirTransfer = 9,
        FreezerTransfer = 9,
        HandTransfer = 100,
        ContactTransfer = 100,
        HandShare = 0.4,
        WorkingShare = 0.3,
        MixSeconds = 60,
        RollSeconds = 60,
    };

    [Fact]
    public void Is_the_label_itself_where_all_is_at_the_labels_temperature()
    {
        CureResult result = CureClock.Run(AtLabel);
        Assert.Equal(0.4 * 200, result[CureMoment.MixedBy].Seconds, 1e-6);
        Assert.Equal(200, result[CureMoment.Firming].Seconds, 1e-6);
        Assert.Equal(400, result[CureMoment.HandsOff].Seconds, 1e-6);
        Assert.Equal(700, result[CureMoment.OffMould].Seconds, 1e-6);
        Assert.Equal(1400, result[CureMoment.LeaveUntil].Seconds, 1e-6); // 90 % to 99 %: as long again
    }

    [Theory]
    [InlineData(13, 2)]
    [InlineData(33, 0.5)]
    public void Takes_twice_as_long_ten_degrees_colder(double celsius, double factor)
    {
        double t = celsius + Zero;
        CureResult result = CureClock.Run(AtLabel with { Room = t, Mould = t, Hand = t });
        Assert.Equal(200 * factor, result[CureMoment.Firming].Seconds, 1e-6);
        Assert.Equal(700 * factor, result[CureMoment.OffMould].Seconds, 1e-6);
    }

    [Fact]
    public void Kneading_follows_the_lumped_law()
    {
        CureInputs warm = AtLabel with { Hand = 33 + Zero, MixSeconds = 120 };
        double r = CureClock.BallRadius(warm.Mass / warm.Density), area = 4 * Math.PI * r * r;
        double hands = 100 * 0.4 * area, air = 9 * 0.6 * area, balance = (hands * 33 + air * 23) / (hands + air);
        double end = balance + (23 - balance) * Math.Exp(-(hands + air) / (0.2 * 1300) * 120);
        Assert.Equal(end, CureClock.Run(warm).Mixed - Zero, 1e-9);
    }

    [Theory]
    [InlineData(ChillShape.Ball)]
    [InlineData(ChillShape.Tub)]
    [InlineData(ChillShape.Sheet)]
    public void Leaves_the_freezer_as_the_exact_series_says(ChillShape shape)
    {
        CureInputs chilled = AtLabel with { Chill = 1080, Shape = shape };
        CureResult result = CureClock.Run(chilled);
        double volume = 0.1 / 1200;
        (BodyShape body, double half) = shape switch
        {
            ChillShape.Ball => (BodyShape.Sphere, Math.Cbrt(3 * volume / (4 * Math.PI))),
            ChillShape.Tub => (BodyShape.Cylinder, Math.Cbrt(volume / (2 * Math.PI))),
            _ => (BodyShape.Slab, 0.005),
        };
        double biot = 9 * half / 0.25, fourier = chilled.Stuff.Diffusivity * 1080 / (half * half);
        RobinSeries series = new(body, biot, fourier);
        Assert.Equal(biot, result.FreezerBiot, 1e-12);
        Assert.Equal(-18 + 41 * series.Mean(fourier), result.ChilledMean - Zero, 0.03);
        Assert.Equal(-18 + 41 * series.At(1, fourier), result.ChilledSurface - Zero, 0.05);
        Assert.Equal(result.ChilledMean, result.AtMixing, 1e-12); // no way to carry it
    }

    [Fact]
    public void A_colder_start_never_hastens_anything() =>
        Gen.Select(Gen.Double[0, 1800], Gen.Double[0, 1800], Gen.Enum<ChillShape>(), Gen.Double[10, 30], Gen.Enum<CureRule>()).Sample((one, other, shape, room, rule) =>
        {
            CureInputs x = AtLabel with { Room = room + Zero, Mould = room + Zero, Hand = 32 + Zero, Shape = shape, Rule = rule, Carry = 30, WorkingShare = 0 }; // hands that stay on longer would warm a cold sheet longer
            CureResult less = CureClock.Run(x with { Chill = Math.Min(one, other) }), more = CureClock.Run(x with { Chill = Math.Max(one, other) });
            foreach (CureMoment moment in Enum.GetValues<CureMoment>())
            {
                Assert.True(more[moment].Seconds >= less[moment].Seconds - 0.05, $"{moment}: {more[moment].Seconds} after {less[moment].Seconds}");
            }

            Assert.Equal([.. less.Moments.Select(m => m.Seconds).Order()], [.. less.Moments.Select(m => m.Seconds)]);
        }, iter: 60);

    [Fact]
    public void Each_moment_opens_to_the_state_before_it()
    {
        foreach (Located m in CureClock.Run(AtLabel with { Hand = 33 + Zero, Mould = 30 + Zero }).Moments)
        {
            Assert.Equal(m.Seconds, m.TimeBefore + (m.AgeWanted - m.AgeBefore) / m.Speed, 1e-9);
        }
    }

    [Fact]
    public void Hardly_changes_with_finer_steps()
    {
        // The mean speed of the sheet, integrated here by a hundredth of the steps on the exact series of a sheet alike on both sides.
        CureInputs x = AtLabel with { ContactTransfer = 40, AirTransfer = 40, WorkingShare = 0, Hand = 33 + Zero, HandShare = 0.9 };
        CureResult result = CureClock.Run(x);
        RobinSeries series = new(BodyShape.Slab, 40 * 0.0015 / 0.25, 1e-6);
        double alpha = x.Stuff.Diffusivity, age = result[CureMoment.Firming].AgeBefore, mixed = result.Mixed - Zero;
        double ageAtMix = 0, steps = 6000;
        for (int i = 0; i < 6000; i++)
        {
            double r = CureClock.BallRadius(0.2 / 1200), area = 4 * Math.PI * r * r, hands = 90 * area, air = 4 * area;
            double balance = (hands * 33 + air * 23) / (hands + air), t = (i + 0.5) / steps * 60;
            ageAtMix += 60 / steps * Math.Pow(2, (balance + (23 - balance) * Math.Exp(-(hands + air) / 260 * t) - 23) / 10);
        }

        double time = 60, done = ageAtMix;
        while (done < 700)
        {
            double fourier = alpha * (time - 60 + 0.025) / (0.0015 * 0.0015);
            done += 0.05 * Math.Pow(2, (mixed - 23) * series.At(1, fourier) / 10); // coldest place: the surface
            time += 0.05;
        }

        Assert.True(age > 0);
        Assert.Equal(time, result[CureMoment.OffMould].Seconds, 1.0);
    }

    [Fact]
    public void Refuses_minutes_upside_down() => Assert.Throws<ArgumentException>(() => CureClock.Run(AtLabel with { SetTime = 100 }));
}

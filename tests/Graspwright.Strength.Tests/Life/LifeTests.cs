using Graspwright.Strength.Fatigue;
using Graspwright.Strength.Life;

namespace Graspwright.Strength.Tests.Life;

public sealed class LifeTests
{
    private static readonly FatigueLine Line = new(4e6, 1e6, 5);
    private static readonly StressBlock[] Grips = [new(8e6, 0, 390), new(15e6, 0, 180), new(30e6, 0, 30)];
    private static readonly StressBlock[] Knocks = [new(10e6, 0, 20), new(22e6, 0, 3), new(45e6, 0, 0.2)];
    private const double Strength = 53e6;

    [Theory]
    [InlineData(0.02)]
    [InlineData(0.3)]
    [InlineData(1.0)]
    [InlineData(1.15)]
    public void Table_agrees_with_the_sum_and_its_integral(double times)
    {
        DamageTable table = new(Knocks, Line, Strength, ends: true);
        Assert.Equal(1, table.Rate(Math.Log(times)) / DamageSum.OfDay(Knocks, Line, Strength, times), 4e-3);

        const int Steps = 200_000;
        double from = Math.Log(1e-6), width = (Math.Log(times) - from) / Steps, sum = 0;
        for (int i = 0; i < Steps; i++)
        {
            sum += DamageSum.OfDay(Knocks, Line, Strength, Math.Exp(from + (i + 0.5) * width)) * width;
        }

        Assert.Equal(1, table.Integrated(Math.Log(times)) / sum, 4e-3);
    }

    [Fact]
    public void Ageing_inside_the_sum_agrees_with_adding_day_by_day()
    {
        const double Ageing = 3e-3;
        LifeDraw draw = LifeDraw.Middle with { Waiting = 1e12 };
        double damage = 0, day = 0;
        const double Step = 0.01;
        while (damage < 1)
        {
            double times = Math.Exp(Ageing * (day + Step / 2));
            damage += Step * (DamageSum.OfDay(Grips, Line, Strength, times) + DamageSum.OfDay(Knocks, Line, Strength, times));
            day += Step;
        }

        double found = new PartLife(Grips, Knocks, Line, Strength, Ageing).Days(draw);
        Assert.Equal(1, found / day, 3e-3);
        Assert.True(found < new PartLife(Grips, Knocks, Line, Strength, 0).Days(draw));
    }

    [Fact]
    public void Without_ageing_the_life_is_one_over_the_days_damage()
    {
        double daily = DamageSum.OfDay(Grips, Line, Strength, 1) + DamageSum.OfDay(Knocks, Line, Strength, 1);
        Assert.Equal(1, new PartLife(Grips, Knocks, Line, Strength, 0).Days(LifeDraw.Middle with { Waiting = 1e12 }) * daily, 5e-3);
        Assert.Equal(double.PositiveInfinity, new PartLife([], [], Line, Strength, 0.001).Days(LifeDraw.Middle));
    }

    [Fact]
    public void A_load_too_great_breaks_it_when_it_comes()
    {
        StressBlock[] blow = [new(60e6, 0, 0.02)];
        Assert.Equal(50 * 1.7, new PartLife([], blow, Line, Strength, 0).OverloadDays(LifeDraw.Middle with { Waiting = 1.7 }), 1e-9);

        // 45 MPa comes with 0.2 a day and is stood until 53·exp(−0.001·t) falls below it.
        double stood = Math.Log(53.0 / 45) / 1e-3;
        Assert.Equal(stood + 5, new PartLife([], [new(45e6, 0, 0.2)], Line, Strength, 1e-3).OverloadDays(LifeDraw.Middle with { Waiting = 1 }), 1e-9);
    }

    [Fact]
    public void Samples_of_a_lone_overload_are_exponential()
    {
        LivingPart part = new([new([], [new(60e6, 0, 0.02)], Line, Strength, 0)], 0, 0);
        double[] days = HandLife.Sample([part], default, 4000, 1).First([0]);
        Array.Sort(days);
        Assert.Equal(50, days.Average(), 0.5);
        Assert.Equal(50 * Math.Log(2), SampledLives.Quantile(days, 0.5), 0.5);
        Assert.Equal(50 * Math.Log(10), SampledLives.Quantile(days, 0.9), 1.5);
    }

    [Fact]
    public void Samples_of_a_lone_fatigue_spread_as_the_material_says()
    {
        LivingPart part = new([new(Grips, [], Line, Strength, 0)], 0, 0.3);
        double[] days = HandLife.Sample([part], default, 2000, 7).First([0]);
        Array.Sort(days);
        double middle = SampledLives.Quantile(days, 0.5);
        Assert.Equal(1, middle * DamageSum.OfDay(Grips, Line, Strength, 1), 0.02);
        Assert.Equal(0.3 * 1.281552, Math.Log10(SampledLives.Quantile(days, 0.9) / middle), 0.02);
    }

    [Fact]
    public void The_same_seed_gives_the_same_lives_and_the_first_break_is_the_least()
    {
        LivingPart part = new([new(Grips, Knocks, Line, Strength, 1e-4)], 0.1, 0.4);
        SampledLives one = HandLife.Sample([part, part], new(0.2, 0.4, 0.35), 200, 3), two = HandLife.Sample([part, part], new(0.2, 0.4, 0.35), 200, 3);
        Assert.Equal(one.Days[1], two.Days[1]);
        Assert.NotEqual(one.Days[0], one.Days[1]);
        Assert.Equal([.. one.Days[0].Zip(one.Days[1], Math.Min)], one.First([0, 1]));
    }

    // Standard normal table.
    [Theory]
    [InlineData(0.5, 0)]
    [InlineData(0.9, 1.2815515655446004)]
    [InlineData(0.975, 1.959963984540054)]
    [InlineData(0.001, -3.090232306167813)]
    [InlineData(0.02, -2.0537489106318225)]
    public void Normal_values_follow_the_table(double share, double value) => Assert.Equal(value, Chance.Normal(share), 4e-9);

    [Fact]
    public void Slices_hold_one_number_each()
    {
        double[] drawn = new double[100];
        Chance chance = new(5);
        chance.Stratified(drawn);
        Assert.Equal(Enumerable.Range(0, 100), drawn.Select(u => (int)(100 * u)).Order());
        Assert.NotEqual(Enumerable.Range(0, 100), drawn.Select(u => (int)(100 * u)));
    }
}

using CsCheck;
using Graspwright.Moulding.Heat;

namespace Graspwright.Moulding.Tests.Heat;

public sealed class HeatedBodyTests
{
    private static readonly HeatedStuff Putty = new(0.25, 1200, 1300);

    [Theory]
    [InlineData(BodyShape.Slab, 0.012, 9)]
    [InlineData(BodyShape.Slab, 0.012, 200)]
    [InlineData(BodyShape.Cylinder, 0.02, 9)]
    [InlineData(BodyShape.Cylinder, 0.02, 120)]
    [InlineData(BodyShape.Sphere, 0.022, 9)]
    [InlineData(BodyShape.Sphere, 0.022, 120)]
    public void Cools_as_the_exact_series_says(BodyShape shape, double length, double transfer)
    {
        const double room = 293.15, freezer = 255.15;
        double half = shape == BodyShape.Slab ? length / 2 : length;
        HeatedBody body = new(shape, length, Putty, room, 64);
        Surroundings around = new(shape == BodyShape.Slab ? transfer : 0, freezer, transfer, freezer);
        RobinSeries series = new(shape, transfer * half / Putty.Conductivity, 1e-3);
        double time = 0;
        foreach (double fourier in (double[])[0.02, 0.1, 0.3, 1])
        {
            double until = fourier * half * half / Putty.Diffusivity;
            body.Advance(around, until - time, 200);
            time = until;
            double mean = (body.Mean - freezer) / (room - freezer);
            double middle = (body.Temperatures[shape == BodyShape.Slab ? 32 : 0] - freezer) / (room - freezer);
            double skin = (body.OuterSurface(around) - freezer) / (room - freezer);
            Assert.Equal(series.Mean(fourier), mean, 3e-4);
            Assert.Equal(series.At(0, fourier), middle, 6e-4);
            Assert.Equal(series.At(1, fourier), skin, 2e-3);
        }
    }

    [Fact]
    public void Comes_nearer_the_series_by_the_square_of_the_cells()
    {
        RobinSeries series = new(BodyShape.Sphere, 3, 1e-3);
        double Miss(int cells)
        {
            HeatedBody body = new(BodyShape.Sphere, 0.02, new(0.2, 1000, 1000), 1, cells);
            Surroundings around = new(0, 0, 30, 0);
            body.Advance(around, 0.2 * 0.02 * 0.02 / 2e-7, 4000);
            return Math.Abs(body.Mean - series.Mean(0.2));
        }

        Assert.InRange(Miss(8) / Miss(16), 3.5, 4.5);
        Assert.InRange(Miss(16) / Miss(32), 3.5, 4.5);
    }

    [Fact]
    public void Keeps_every_joule_through_random_phases() =>
        Gen.Select(Gen.Enum<BodyShape>(), Gen.Double[0.002, 0.05], Gen.Double[0, 400].Array[8], Gen.Double[240, 330].Array[8], Gen.Double[1, 900].Array[4]).Sample((shape, length, transfers, temperatures, seconds) =>
        {
            HeatedBody body = new(shape, length, Putty, 293.15, 20);
            double before = body.HeatHeld;
            for (int i = 0; i < 4; i++)
            {
                body.Advance(new(transfers[i], temperatures[i], transfers[i + 4], temperatures[i + 4]), seconds[i], 7);
            }

            Assert.Equal(body.HeatIn, body.HeatHeld - before, 1e-9 * before);
        });

    [Fact]
    public void Comes_to_rest_on_the_straight_line_between_two_sides()
    {
        // Steady: the flow through both surfaces and the sheet is the same; resistance 1÷h₁ + L÷k + 1÷h₂.
        HeatedBody body = new(BodyShape.Slab, 0.003, Putty, 280, 16);
        Surroundings around = new(100, 305, 9, 293);
        body.Advance(around, 3000, 600);
        double flow = (305.0 - 293) / (1 / 100.0 + 0.003 / 0.25 + 1 / 9.0);
        Assert.Equal(305 - flow / 100, body.InnerSurface(around), 1e-6);
        Assert.Equal(293 + flow / 9, body.OuterSurface(around), 1e-6);
    }
}

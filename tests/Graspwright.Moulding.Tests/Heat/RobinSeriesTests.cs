using Graspwright.Moulding.Heat;

namespace Graspwright.Moulding.Tests.Heat;

public sealed class RobinSeriesTests
{
    // Coefficients of the first term as tabulated in textbooks: Incropera and DeWitt, table 5.1; Çengel, table 4-2 (from memory).
    [Theory]
    [InlineData(BodyShape.Slab, 0.1, 0.3111, 1.0161)]
    [InlineData(BodyShape.Slab, 1, 0.8603, 1.1191)]
    [InlineData(BodyShape.Slab, 10, 1.4289, 1.2620)]
    [InlineData(BodyShape.Cylinder, 0.1, 0.4417, 1.0246)]
    [InlineData(BodyShape.Cylinder, 1, 1.2558, 1.2071)]
    [InlineData(BodyShape.Cylinder, 10, 2.1795, 1.5677)]
    [InlineData(BodyShape.Sphere, 0.1, 0.5423, 1.0298)]
    [InlineData(BodyShape.Sphere, 1, 1.5708, 1.2732)]
    [InlineData(BodyShape.Sphere, 10, 2.8363, 1.9249)]
    [InlineData(BodyShape.Sphere, 40, 3.0632, 1.9942)] // the weight seen quoted in a worked example of a boiled egg
    public void Finds_the_first_term_of_the_textbook_tables(BodyShape shape, double biot, double root, double weight)
    {
        Assert.Equal(root, RobinSeries.Root(shape, biot, 0), 5.1e-5);
        Assert.Equal(weight, new RobinSeries(shape, biot, 0.2).FirstWeight, 1.01e-4);
    }

    [Theory]
    [InlineData(BodyShape.Slab, 0.37)]
    [InlineData(BodyShape.Cylinder, 0.37)]
    [InlineData(BodyShape.Sphere, 0.37)]
    [InlineData(BodyShape.Sphere, 5.0)]
    public void Every_root_solves_its_equation(BodyShape shape, double biot)
    {
        double before = 0;
        for (int n = 0; n < 30; n++)
        {
            double z = RobinSeries.Root(shape, biot, n);
            double miss = shape switch
            {
                BodyShape.Slab => z * Math.Tan(z) - biot,
                BodyShape.Sphere => 1 - z / Math.Tan(z) - biot,
                _ => z * Bessel.J1(z) / Bessel.J0(z) - biot,
            };
            Assert.True(z > before);
            Assert.Equal(0, miss, 1e-9 * (1 + z * z));
            before = z;
        }
    }

    [Theory]
    [InlineData(BodyShape.Slab)]
    [InlineData(BodyShape.Cylinder)]
    [InlineData(BodyShape.Sphere)]
    public void Begins_with_the_whole_difference_and_tends_to_the_lumped_rule(BodyShape shape)
    {
        RobinSeries early = new(shape, 2, 1e-3);
        Assert.Equal(1, early.At(0, 1e-3), 1e-9);
        Assert.Equal(1, early.Mean(1e-7 + 1e-3), 0.02);
        // Small Biot number: exp(-n·Bi·Fo), n = 1, 2, 3 for slab, cylinder, sphere.
        const double biot = 1e-4, fourier = 3000;
        double n = shape switch { BodyShape.Slab => 1, BodyShape.Cylinder => 2, _ => 3 };
        Assert.Equal(Math.Exp(-n * biot * fourier), new RobinSeries(shape, biot, 1).Mean(fourier), 1e-4);
    }

    // Zeros tabulated in Abramowitz and Stegun, table 9.5 (from memory).
    [Fact]
    public void Knows_the_zeros_of_the_bessel_functions()
    {
        Assert.Equal(2.4048255577, Bessel.ZeroOfJ0(0), 1e-9);
        Assert.Equal(5.5200781103, Bessel.ZeroOfJ0(1), 1e-9);
        Assert.Equal(3.8317059702, Bessel.ZeroOfJ1(1), 1e-9);
        Assert.Equal(0.7651976866, Bessel.J0(1), 1e-9);
        Assert.Equal(0.4400505857, Bessel.J1(1), 1e-9);
    }
}

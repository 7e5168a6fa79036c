using System.Runtime.Intrinsics;
using Graspwright.Mechanics.Equilibrium;

namespace Graspwright.Mechanics.Tests.Equilibrium;

public sealed class SineAndCosineTests
{
    // Against the run-time library's Math.Sin and Math.Cos, correct to within a unit in the last place.
    [Fact]
    public void Agree_with_the_run_time_library_over_many_turns()
    {
        Random random = new(11);
        double worst = 0;
        for (int round = 0; round < 200_000; round++)
        {
            double reach = round % 2 == 0 ? 7 : 1000;
            double[] angle = [.. Enumerable.Range(0, 4).Select(_ => reach * (2 * random.NextDouble() - 1))];
            SineAndCosine.Of(Vector256.Create<double>(angle), out Vector256<double> sine, out Vector256<double> cosine);
            for (int lane = 0; lane < 4; lane++)
            {
                worst = Math.Max(worst, Math.Max(Math.Abs(sine[lane] - Math.Sin(angle[lane])), Math.Abs(cosine[lane] - Math.Cos(angle[lane]))));
            }
        }

        Assert.True(worst < 2.5e-16, $"off by {worst}");
    }

    [Theory]
    [InlineData(0, 0, 1)]
    [InlineData(Math.PI / 2, 1, 6.123233995736766e-17)]
    [InlineData(-Math.PI / 2, -1, 6.123233995736766e-17)]
    [InlineData(Math.PI, 1.2246467991473532e-16, -1)]
    [InlineData(Math.PI / 6, 0.49999999999999994, 0.8660254037844387)]
    public void Keep_quarter_turns_apart(double angle, double sine, double cosine)
    {
        SineAndCosine.Of(Vector256.Create(angle), out Vector256<double> s, out Vector256<double> c);
        for (int lane = 0; lane < 4; lane++)
        {
            Assert.Equal(sine, s[lane], 2e-16);
            Assert.Equal(cosine, c[lane], 2e-16);
        }
    }
}

using Graspwright.Strength.Sections;

namespace Graspwright.Strength.Tests.Sections;

public class SectionTests
{
    // Coefficients of torsion of rectangular bars, Timoshenko and Goodier, Theory of Elasticity (table; from memory).
    [Theory]
    [InlineData(1.0, 0.1406, 0.208)]
    [InlineData(1.5, 0.196, 0.231)]
    [InlineData(2.0, 0.229, 0.246)]
    [InlineData(4.0, 0.281, 0.282)]
    [InlineData(10.0, 0.312, 0.312)]
    public void Twist_of_a_rectangle_agrees_with_the_table(double ratio, double stiffness, double strength)
    {
        Section section = Section.Rectangle(ratio, 1.0);
        Assert.Equal(stiffness, section.TorsionConstant / ratio, 6e-4);
        Assert.Equal(strength, section.TorsionModulus / ratio, 6e-4);
    }

    [Fact]
    public void Refuses_a_tube_without_a_wall() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Section.Round(0.003, 0.003));
}

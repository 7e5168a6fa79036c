using Graspwright.Strength.Pins;

namespace Graspwright.Strength.Tests.Pins;

public sealed class ClevisPinTests
{
    // Gere, Mechanics of Materials, example 1-5 (page 36): 12 kip on a pin of 0.75 in gives 13.6 ksi.
    // Beer, Johnston & DeWolf, Mechanics of Materials, 6th edition, sample 1.1 (page 18): 750 lb, 0.25 in, double shear, 7639 psi.
    [Theory]
    [InlineData(12, 0.75, 13.581221811)]
    [InlineData(750, 0.25, 7639.437268)]
    public void Shear_agrees_with_the_textbooks(double force, double diameter, double stress) =>
        Assert.Equal(stress, force * new ClevisPin(diameter, 1, 1, 0).ShearPerNewton, 1e-9 * stress);

    // EN 1993-1-8, clause 3.13: a filled sheet for a pin of 16 mm has A = 201.062 mm² and W = 402.124 mm³.
    [Fact]
    public void Section_agrees_with_a_filled_sheet_of_the_standard()
    {
        ClevisPin pin = new(16, 6, 10, 1);
        Assert.Equal(201.061929830, pin.Area, 1e-9);
        Assert.Equal(402.123859659, pin.Modulus, 1e-9);
        Assert.Equal((10 + 4 + 12) / 8.0, pin.MomentPerNewton, 1e-12);
    }

    [Fact]
    public void Moment_of_a_couple_is_the_greatest_of_the_beams_diagram()
    {
        // The pin as a beam, shear summed in small steps: forces in the middles of the ears, the tongue's load growing from its middle.
        ClevisPin pin = new(3, 3, 8, 0.1);
        const int Steps = 400_000;
        double w = pin.Tongue, slope = 12 * pin.Spacing / (w * w * w), moment = pin.Gap + pin.Ear / 2, shear = 1, greatest = moment, dz = w / 2 / Steps;
        for (int i = 0; i < Steps; i++)
        {
            double z = w / 2 - (i + 0.5) * dz;
            moment += (shear - slope * z * dz / 2) * dz;
            shear -= slope * z * dz;
            greatest = Math.Max(greatest, moment);
        }

        Assert.Equal(0, moment, 1e-9); // by symmetry nothing is left in the middle
        Assert.Equal(greatest, pin.CoupleMomentPerNewton, 1e-9);
    }
}

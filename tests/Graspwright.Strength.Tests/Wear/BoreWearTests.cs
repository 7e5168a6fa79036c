using Graspwright.Strength.Wear;

namespace Graspwright.Strength.Tests.Wear;

public sealed class BoreWearTests
{
    [Fact]
    public void Volume_worn_is_archards()
    {
        // 10⁻⁵ mm³/(N·m), 20 N turning by 2 rad on a pin of 3 mm: rubbed 3 mm·2/2 = 3 mm; volume 6·10⁻⁷ mm³ over 3 mm × 6 mm.
        double play = BoreWear.PlayPerGrip(1e-14, 40, 0.006);
        Assert.Equal(1e-14 * 20 * 0.003 / (0.003 * 0.006), play, 1e-20);
    }

    [Fact]
    public void Play_of_one_hinge_shows_at_the_tip_by_its_arm() =>
        Assert.Equal(2 * 0.0001 * 0.08 / 0.014, BoreWear.TipPlay([0.0001], [0.08], [0.014]), 1e-15);
}

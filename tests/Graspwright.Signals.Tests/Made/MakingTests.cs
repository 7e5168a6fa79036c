using Graspwright.Signals.Made;
using Graspwright.Signals.Recordings;

namespace Graspwright.Signals.Tests.Made;

public sealed class MakingTests
{
    [Fact]
    public void Makes_the_same_from_the_same_seed_and_something_else_from_another()
    {
        Recording first = Making.Of(Scenes.Four()), again = Making.Of(Scenes.Four()), other = Making.Of(Scenes.Four(2));
        Assert.Equal(first.Channels[2].Counts, again.Channels[2].Counts);
        Assert.NotEqual(first.Channels[2].Counts, other.Channels[2].Counts);
    }

    [Fact]
    public void Cross_talk_falls_with_distance_as_stated()
    {
        Scene scene = Scenes.Four();
        double own = Making.Coupling(scene, scene.Sites[0], scene.Muscles[0]), next = Making.Coupling(scene, scene.Sites[1], scene.Muscles[0]);
        Assert.Equal(Math.Exp(-30 / scene.FallMm), next / own, 1e-12);
    }
}

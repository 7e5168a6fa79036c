using Graspwright.Hand;
using Graspwright.Page.Changes;
using Graspwright.Page.Hands;

namespace Graspwright.Page.Tests.Changes;

public sealed class ChangeMakingTests : IDisposable
{
    private readonly DemoHand _demo = new();
    private readonly OpenHand _open;

    public ChangeMakingTests() => _open = new(_demo.File, TimeProvider.System);

    public void Dispose() => _demo.Dispose();

    public static TheoryData<string> Names
    {
        get
        {
            using DemoHand demo = new();
            return [.. HandFile.Read(demo.File).Hand!.Decisions.Changes.Select(c => c.Name)];
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_change_of_the_demo_is_made_and_taken_back_byte_for_byte(string name)
    {
        string before = _demo.Text;
        Assert.True(ChangeMaking.Make(_open, name).IsDone);
        Assert.NotEqual(before, _demo.Text);
        Change change = _open.State.Hand!.Decisions.Changes.First(c => c.Name == name);
        Assert.Equal(change.Parts.Count == 0, ChangeMaking.IsMade(_open, change));
        Assert.True(_open.Undo().IsDone);
        Assert.Equal(before, _demo.Text);
    }

    [Fact]
    public void A_change_that_is_not_on_the_list_is_told() => Assert.Contains("no change 'wings'", ChangeMaking.Make(_open, "wings").Errors[0].Found, StringComparison.Ordinal);
}

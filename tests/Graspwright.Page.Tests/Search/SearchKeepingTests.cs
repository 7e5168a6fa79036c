using Graspwright.Page.Hands;
using Graspwright.Page.Search;
using Graspwright.Page.Works;

namespace Graspwright.Page.Tests.Search;

public sealed class SearchKeepingTests : IDisposable
{
    private const string Name = "where the fulcrum goes";
    private readonly DemoHand _demo = new();
    private readonly LongWorks _works = new(TimeProvider.System);
    private readonly OpenHand _open;
    private readonly SearchKeeping _keeping;

    public SearchKeepingTests()
    {
        _open = new(_demo.File, TimeProvider.System);
        _keeping = new(_open, _works);
    }

    public void Dispose()
    {
        _works.Dispose();
        _demo.Dispose();
    }

    [Fact]
    public void A_point_goes_into_the_file_by_its_paths_and_undo_gives_the_same_bytes()
    {
        string before = _demo.Text;
        Assert.True(_keeping.Begin(Name, "64", "", polish: false).IsDone);
        _keeping.Work!.Wait(Timeout.InfiniteTimeSpan);
        Searched found = (Searched)_keeping.Told().Result!;
        Assert.NotEmpty(found.Result.Study!.Front);
        Assert.True(_keeping.Apply(1, polished: false).IsDone);
        IReadOnlyList<string> names = found.Result.Study.Variants.Names, texts = found.Result.Study.Variants.Texts(found.Result.Study.Front[0].Values);
        Assert.All(names.Zip(texts), v => Assert.Equal(v.Second, _open.Find(v.First)!.Text));
        Assert.True(_open.Undo().IsDone);
        Assert.Equal(before, _demo.Text);
    }

    [Fact]
    public void What_is_kept_is_gone_on_with_only_for_the_file_that_was_searched()
    {
        Assert.True(_keeping.Begin(Name, "48", "3", polish: false).IsDone);
        _keeping.Work!.Wait(Timeout.InfiniteTimeSpan);
        Assert.Equal(48, _keeping.Kept()!.Judged);
        Assert.Equal(3, _keeping.Kept()!.Seed);
        Assert.True(_open.Edit([new("crank.fulcrum.x", "21.4 mm")], "a try").IsDone);
        Assert.Null(_keeping.Kept());
        Assert.False(_keeping.GoOn().IsDone);
    }

    [Theory]
    [InlineData("0", "")]
    [InlineData("-5", "")]
    [InlineData("1e3", "")]
    [InlineData("99999999999999999999", "")]
    [InlineData("", "one")]
    public void Nonsense_begins_nothing(string evaluations, string seed)
    {
        Assert.Single(_keeping.Begin(Name, evaluations, seed, polish: false).Errors);
        Assert.Null(_keeping.Work);
    }

    [Fact]
    public void A_file_that_is_none_of_ours_is_left_alone()
    {
        File.WriteAllText(_keeping.File, "{\"Search\": 7}");
        Assert.Null(_keeping.Kept());
        Assert.Single(_keeping.Apply(1, polished: false).Errors);
        Assert.Equal("{\"Search\": 7}", File.ReadAllText(_keeping.File));
    }
}

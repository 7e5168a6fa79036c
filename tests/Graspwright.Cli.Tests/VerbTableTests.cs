namespace Graspwright.Cli.Tests;

public sealed class VerbTableTests
{
    [Fact]
    public void Lists_every_verb_once_under_its_own_word()
    {
        Assert.All(VerbTable.All, v => Assert.Equal(v.Word, v.Make().Name));
        Assert.Equal(VerbTable.All.Count, VerbTable.All.DistinctBy(v => v.Word).Count());
        Type[] written = [.. typeof(Verb).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(Verb)) && !t.IsAbstract)];
        Assert.Equal(written.OrderBy(t => t.Name), VerbTable.All.Select(v => v.Make().GetType()).OrderBy(t => t.Name));
    }

    [Fact]
    public void Makes_the_one_verb_that_is_asked_for_and_all_where_none_is_known()
    {
        Assert.Equal("check", Assert.Single(VerbTable.For(["check", "hand.toml"])).Name);
        Assert.Equal(VerbTable.All.Count, VerbTable.For(["chek"]).Count);
        Assert.Equal(VerbTable.All.Count, VerbTable.For([]).Count);
    }
}

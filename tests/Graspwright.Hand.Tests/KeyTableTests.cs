namespace Graspwright.Hand.Tests;

public sealed class KeyTableTests
{
    [Fact]
    public void Keeps_the_reference_in_the_repository_up_to_date()
    {
        DirectoryInfo? root = new(AppContext.BaseDirectory);
        while (root is not null && !File.Exists(Path.Combine(root.FullName, "Graspwright.slnx")))
        {
            root = root.Parent;
        }

        Assert.NotNull(root);
        string file = Path.Combine(root.FullName, "docs", "hand-file.md");
        if (Environment.GetEnvironmentVariable("GRASPWRIGHT_WRITE_DOCS") == "1")
        {
            File.WriteAllText(file, HandReference.Markdown());
        }

        string stored = File.ReadAllText(file);
        Assert.Equal(HandReference.Markdown(), stored.ReplaceLineEndings("\n"));
    }

    [Fact]
    public void Gives_every_example_and_default_as_the_key_itself_allows() =>
        Assert.All(AllKeys(HandKeys.Root, "", []), k =>
        {
            foreach (string toml in new[] { k.Key.Example, k.Key.Default }.OfType<string>().Where(t => t.Length > 0))
            {
                Assert.DoesNotContain(HandFile.Parse($"{k.Path} = {toml}\n", "hand.toml").Errors,
                    e => e.Key.StartsWith(k.Path, StringComparison.Ordinal) && e.Found is not ("nothing" or "no finger") && e.Line == 1 && !e.Found.Contains("which is no ", StringComparison.Ordinal));
            }
        });

    [Fact]
    public void Names_a_source_that_the_register_has() =>
        Assert.All(AllKeys(HandKeys.Root, "", []).Select(k => k.Key.SourceKey).OfType<string>(), key => Assert.Equal(key, Source.Find(key).Key));

    [Fact]
    public void Uses_every_source_of_the_register()
    {
        HashSet<string> used = [.. AllKeys(HandKeys.Root, "", []).Select(k => k.Key.SourceKey).OfType<string>()];
        Assert.Equal(Source.All.Select(s => s.Key), Source.All.Select(s => s.Key).Where(used.Contains));
    }

    [Fact]
    public void Says_what_every_key_means() =>
        Assert.All(AllKeys(HandKeys.Root, "", []), k => Assert.True(k.Key.Words.Length > 0 || k.Key.Form == KeyForm.Table, k.Path));

    [Theory]
    [InlineData("crank.fulcrum.x", Dimension.Length)]
    [InlineData("fingers.index.segments[1]", Dimension.Length)]
    [InlineData("fingers.\"an odd one\".open[3]", Dimension.Angle)]
    [InlineData("balance.first.second.tilt_stop", Dimension.Angle)]
    [InlineData("wrist.capacity.extension[1][1]", Dimension.Angle)]
    [InlineData("wrist.capacity.extension[1][2]", Dimension.Moment)]
    [InlineData("give.cuff", Dimension.AngularStiffness)]
    public void Knows_the_dimension_at_every_path(string path, Dimension dimension)
    {
        Assert.True(HandPath.TryDescribe(path, out HandKey? key, out _));
        Assert.Equal(dimension, key.Dimension);
    }

    [Theory]
    [InlineData("crank.fulcrm.x", "crank.fulcrum.x")]
    [InlineData("crank.fulcrm.q", "crank.fulcrum")]
    [InlineData("fingers.all.segmens[2]", "fingers.all.segments[2]")]
    [InlineData("crank.fulcrum", "crank.fulcrum.x")]
    [InlineData("wrst.travl", "wrist.travel")]
    [InlineData("fingers.index.segments", "fingers.index.segments[1]")]
    [InlineData("zzzzzz", null)]
    [InlineData("a..b", null)]
    public void Suggests_the_nearest_path(string path, string? near)
    {
        Assert.False(HandPath.TryDescribe(path, out _, out string? found));
        Assert.Equal(near, found);
    }

    private static IEnumerable<(string Path, HandKey Key)> AllKeys(HandSection section, string path, HashSet<HandSection> done)
    {
        if (!done.Add(section))
        {
            yield break;
        }

        foreach (HandKey key in section.Keys.Append(section.AnyKey).OfType<HandKey>())
        {
            string here = HandPath.Join(path, key.Form == KeyForm.Tolerance || key.Name is "\"PATH\"" ? "crank.fulcrum.x" : key.Name is "\"SECTION\"" ? "rail" : key.Name);
            yield return (here, key);
            foreach ((string Path, HandKey Key) below in key.Parts is null ? [] : AllKeys(key.Parts(), here, done))
            {
                yield return below;
            }
        }
    }
}

using System.Text;
using System.Text.Json;

namespace Graspwright.Cli.Tests;

/// <summary>The verbs of form and pattern as a maker types them.</summary>
public sealed class FormVerbTests
{
    [Theory]
    [InlineData("form", "Made from 6 tape marks")]
    [InlineData("pattern", "The liner is cut as ")]
    public void Answers_on_the_demo_with_a_sentence_first(string verb, string begins)
    {
        Started run = Started.Run(verb, Started.Demo);
        Assert.Equal(0, run.Code);
        Assert.StartsWith(begins, run.Answers, StringComparison.Ordinal);
        Assert.Contains("Cautions", run.Answers, StringComparison.Ordinal);
        using JsonDocument json = JsonDocument.Parse(Started.Run(verb, Started.Demo, "--json").Answers);
        Assert.Equal(verb, json.RootElement.GetProperty("verb").GetString());
        Assert.NotEmpty(json.RootElement.GetProperty("figures").EnumerateObject());
    }

    [Fact]
    public void Writes_its_files_and_compares_a_traced_outline()
    {
        using Folder folder = new();
        Assert.Equal(0, Started.Run("form", Started.Demo, "--svg", folder["a.svg"], "--stl", folder["a.stl"], "--csv", folder["a.csv"]).Code);
        Assert.Equal(0, Started.Run("pattern", Started.Demo, "--svg", folder["b.svg"], "--stretch", folder["c.svg"], "--dxf", folder["b.dxf"], "--pdf", folder["b.pdf"]).Code);
        Assert.Equal(["a.csv", "a.stl", "a.svg", "b.dxf", "b.pdf", "b.svg", "c.svg"], folder.Names);
        // the cut line of the drawing itself, put beside the pattern: off by the allowance along seams and nowhere by more than its mitre
        Started run = Started.Run("pattern", Started.Demo, "--compare", folder["b.dxf"]);
        Assert.Equal(0, run.Code);
        Assert.Contains("The traced outline lies", run.Answers, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("stl", "solid x", "no triangle")]
    [InlineData("stl", "", "an empty file")]
    [InlineData("obj", "v 0 0 0\nv 1 0 0\nv 0 nan 0\nf 1 2 3\n", "line 3")]
    [InlineData("ply", "not a ply\n", "no 'ply'")]
    [InlineData("glb", "not a glb at all, by far", "no glTF header")]
    [InlineData("obj", "v 0 0 0\nv 12 0 0\nv 0 12 0\nv 0 0 12\nf 1 3 2\nf 1 2 4\nf 1 4 3\nf 2 3 4\n", "more than one unit")]
    [InlineData("obj", "v 0 0 0\nv 9000 0 0\nv 0 9000 0\nv 0 0 9000\nf 1 3 2\nf 1 2 4\nf 1 4 3\nf 2 3 4\n", "no limb in any unit")]
    [InlineData("obj", "v 0 0 0\nv 300 0 0\nv 0 300 0\nv 0 0 300\nf 1 3 2\nf 1 2 4\nf 1 4 3\nf 2 3 4\n", "a plane that misses the scan")]
    [InlineData("xyz", "1 2 3", ".stl, .obj, .ply or .glb")]
    public void Explains_a_bad_scan(string ending, string content, string words)
    {
        using Folder folder = new();
        string hand = folder.Changed("[liner]\n", $"[form.scan]\nfile = \"limb.{ending}\"\n\n[liner]\n");
        File.WriteAllText(folder[$"limb.{ending}"], content, Encoding.UTF8.GetPreamble().Length > 0 ? new UTF8Encoding(false) : Encoding.UTF8);
        Started run = Started.Run("form", hand);
        Assert.Equal(2, run.Code);
        Assert.Contains(words, run.Talk, StringComparison.Ordinal);
    }

    [Fact]
    public void Explains_a_missing_scan_and_girths_that_no_curve_has()
    {
        using Folder folder = new();
        Started missing = Started.Run("form", folder.Changed("[liner]\n", "[form.scan]\nfile = \"limb.stl\"\n\n[liner]\n"));
        Assert.Equal(2, missing.Code);
        Assert.Contains("no file limb.stl", missing.Talk, StringComparison.Ordinal);
        using Folder other = new();
        Started girth = Started.Run("form", other.Changed("girth = \"172 mm\"", "girth = \"272 mm\""));
        Assert.Equal(2, girth.Code);
        Assert.Contains("no rounded shape", girth.Talk, StringComparison.Ordinal);
    }
}

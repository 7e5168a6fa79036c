using System.Text;
using CsCheck;

namespace Graspwright.Hand.Tests;

public sealed class FileTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory();

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void Names_a_file_that_is_not_there()
    {
        string path = Path.Combine(_folder.FullName, "none.toml");
        HandError error = Assert.Single(HandFile.Read(path).Errors);
        Assert.Equal(($"{path}: found no such file; allowed: a hand file; fix: check the name and the folder", 0), (error.Message, error.Line));
        Assert.Equal("a folder", Assert.Single(HandFile.Read(_folder.FullName).Errors).Found);
    }

    [Theory]
    [InlineData("\n", false)]
    [InlineData("\r\n", false)]
    [InlineData("\n", true)]
    [InlineData("\r\n", true)]
    public void Reads_both_line_ends_with_and_without_byte_order_mark(string lineEnd, bool mark)
    {
        string path = Store([.. mark ? Encoding.UTF8.GetPreamble() : [], .. Encoding.UTF8.GetBytes(Starter.Text.ReplaceLineEndings(lineEnd))]);
        HandReading reading = HandFile.Read(path);
        Assert.Empty(reading.Errors);
        Assert.Equal(File.ReadAllBytes(path), reading.Source!.Text.ToBytes());
    }

    [Fact]
    public void Gives_the_same_places_for_both_line_ends()
    {
        string wrong = Starter.Text.Replace("travel = \"24 mm\"", "travel = 24", StringComparison.Ordinal);
        Assert.Equal(HandFile.Parse(wrong, "hand.toml").Errors, HandFile.Parse(wrong.ReplaceLineEndings("\r\n"), "hand.toml").Errors);
    }

    [Fact]
    public void Explains_other_encodings()
    {
        foreach (Encoding encoding in new[] { Encoding.Unicode, Encoding.BigEndianUnicode })
        {
            Assert.Equal("hand.toml(1,1): found UTF-16 text; allowed: UTF-8 text; fix: save the file again with the encoding UTF-8",
                Assert.Single(HandFile.Parse([.. encoding.GetPreamble(), .. encoding.GetBytes(Starter.Text)], "hand.toml").Errors).Message);
            Assert.Equal("UTF-16 text", Assert.Single(HandFile.Parse(encoding.GetBytes(Starter.Text), "hand.toml").Errors).Found);
        }

        HandError latin = Assert.Single(HandFile.Parse(Encoding.Latin1.GetBytes("# first\nname = \"déjà\"\n"), "hand.toml").Errors);
        Assert.Equal((2, 10, "the byte 0xE9, which is not UTF-8"), (latin.Line, latin.Column, latin.Found));
    }

    [Fact]
    public void Refuses_ten_megabytes_of_garbage()
    {
        string path = Store(new byte[HandText.GreatestBytes + 1]);
        Assert.Equal("at most 10000000 bytes", Assert.Single(HandFile.Read(path).Errors).Allowed);
        byte[] garbage = new byte[HandText.GreatestBytes];
        Array.Fill(garbage, (byte)'[');
        Assert.Equal("nesting deeper than any hand needs", Assert.Single(HandFile.Parse(garbage, "hand.toml").Errors).Found);
        Array.Fill(garbage, (byte)'x');
        Assert.NotEmpty(HandFile.Parse(garbage, "hand.toml").Errors);
    }

    [Fact]
    public void Answers_in_good_time_on_large_files_that_mean_nothing()
    {
        string digits = new('1', 2_000_000);
        Assert.NotEmpty(HandFile.Parse($"name = \"{digits} -\"\n[wrist]\ntravel = \"{digits}x-\"\n{digits} = {digits},\n", "hand.toml").Errors);
        Assert.NotEmpty(HandFile.Parse($"[wrist]\ntravel = \"{digits}x-\"\n", "hand.toml").Errors);
        string keys = string.Concat(Enumerable.Range(0, 20_000).Select(i => FormattableString.Invariant($"[a{i}.b]\nc = 1\n")));
        IReadOnlyList<HandError> errors = HandFile.Parse(keys, "hand.toml").Errors;
        Assert.Equal("more than 500 errors", errors[^1].Found);
    }

    [Theory]
    [InlineData("a = ", "[", 37)]
    [InlineData("a = ", "{a = ", 165)]
    [InlineData("", "a.", 66)]
    [InlineData("", "[", 33)]
    public void Stops_at_nesting_that_is_too_deep(string start, string again, int column)
    {
        HandError error = Assert.Single(HandFile.Parse(start + string.Concat(Enumerable.Repeat(again, 100_000)), "hand.toml").Errors);
        Assert.Equal((1, column, "at most 32 levels of brackets, braces or dots"), (error.Line, error.Column, error.Allowed));
    }

    [Fact]
    public void Never_throws_on_random_bytes() =>
        Gen.Byte.Array[0, 400].Sample(bytes => Assert.NotEmpty(HandFile.Parse(bytes, "hand.toml").Errors));

    [Fact]
    public void Never_throws_on_a_damaged_file()
    {
        byte[] whole = Encoding.UTF8.GetBytes(Starter.Text);
        Gen.Select(Gen.Int[0, whole.Length - 1], Gen.Byte, Gen.Int[0, 40]).Sample(
            (at, value, gone) =>
            {
                byte[] damaged = [.. whole[..at], value, .. whole[Math.Min(whole.Length, at + gone)..]];
                HandReading reading = HandFile.Parse(damaged, "hand.toml");
                Assert.Equal(reading.Errors.Count == 0, reading.Hand is not null);
                Assert.All(reading.Errors, e => Assert.False(e.Line < 0 || e.Fix.Length == 0 || e.Message.Any(char.IsControl)));
            },
            iter: 300);
    }

    [Fact]
    public void Never_throws_on_toml_of_the_wrong_shape()
    {
        string[] keys = ["name", "wrist", "travel", "fingers", "index", "all", "balance", "first", "crank", "slot", "objects", "locks", "tolerances", "files", "capacity", "flexion", "\"a b\""];
        string[] values = ["1", "true", "1979-05-27", "\"12 mm\"", "[]", "{}", "[[]]", "[1, [2]]", "[{}]", "{ x = 1 }", "\"index\"", "inf"];
        Gen.Select(Gen.Int[0, keys.Length - 1], Gen.Int[0, keys.Length - 1], Gen.Int[0, values.Length - 1], Gen.Bool).Sample((i, j, k, list) =>
        {
            (string a, string b, string value) = (keys[i], keys[j], values[k]);
            string text = list ? $"[[{a}]]\n{b} = {value}\n" : $"[{a}]\n{b} = {value}\n";
            Assert.NotEmpty(HandFile.Parse(text, "hand.toml").Errors);
            Assert.NotEmpty(HandFile.Parse($"{a}.{b} = {value}\n", "hand.toml").Errors);
            Assert.NotEmpty(HandFile.Parse($"{a} = {value}\n", "hand.toml").Errors);
        });
    }

    [Theory]
    [InlineData("bench/readings.csv", true)]
    [InlineData("./readings.csv", true)]
    [InlineData("a..b.csv", true)]
    [InlineData("../x.csv", false)]
    [InlineData("bench/../../x.csv", false)]
    [InlineData("..\\x.csv", false)]
    [InlineData("/x.csv", false)]
    [InlineData("C:\\x.csv", false)]
    [InlineData("\\\\server\\x.csv", false)]
    [InlineData("", false)]
    [InlineData("a\0b", false)]
    public void Keeps_named_files_in_the_folder(string name, bool inside) =>
        Assert.Equal(inside, NamedFiles.Fault(name, _folder.FullName) is null);

    [Fact]
    public void Follows_links_before_it_trusts_a_name()
    {
        DirectoryInfo outside = Directory.CreateTempSubdirectory();
        try
        {
            File.CreateSymbolicLink(Path.Combine(_folder.FullName, "away.csv"), Path.Combine(outside.FullName, "x.csv"));
            Directory.CreateSymbolicLink(Path.Combine(_folder.FullName, "bench"), outside.FullName);
            File.WriteAllText(Path.Combine(_folder.FullName, "real.csv"), "");
            File.CreateSymbolicLink(Path.Combine(_folder.FullName, "near.csv"), "real.csv");
            Assert.NotNull(NamedFiles.Fault("away.csv", _folder.FullName));
            Assert.NotNull(NamedFiles.Fault("bench/x.csv", _folder.FullName));
            Assert.Null(NamedFiles.Fault("near.csv", _folder.FullName));
            Assert.Null(NamedFiles.Fault("not/there/yet.csv", _folder.FullName));
        }
        finally
        {
            outside.Delete(recursive: true);
        }
    }

    private string Store(byte[] bytes)
    {
        string path = Path.Combine(_folder.FullName, "hand.toml");
        File.WriteAllBytes(path, bytes);
        return path;
    }

    [Fact]
    public void Files_that_are_named_and_missing_are_told_with_their_place()
    {
        string folder = Directory.CreateTempSubdirectory().FullName;
        try
        {
            string path = Path.Combine(folder, "hand.toml");
            File.WriteAllText(path, "name = \"x\"\n[files]\nlog = \"gone.csv\"\nreadings = \"here.csv\"\nfolder = \"sub\"\n");
            File.WriteAllText(Path.Combine(folder, "here.csv"), "");
            Directory.CreateDirectory(Path.Combine(folder, "sub"));
            IReadOnlyList<HandError> missing = NamedFiles.Missing(HandFile.Read(path).Source!, folder);
            Assert.Equal([(3, "files.log"), (5, "files.folder")], missing.Select(m => (m.Line, m.Key)));
            Assert.All(missing, m => Assert.Contains("correct its name", m.Fix, StringComparison.Ordinal));
            Assert.Contains("a folder", missing[1].Found, StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}

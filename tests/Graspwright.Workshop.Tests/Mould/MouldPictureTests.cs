using Graspwright.Drawing.Svg;
using Graspwright.Workshop.Mould;

namespace Graspwright.Workshop.Tests.Mould;

/// <summary>Pictures of clock and coming off; the one in the documents is the program's own.</summary>
public sealed class MouldPictureTests
{
    private static readonly ClockResult Clock = ClockAnswer.Of(Boatyard.Hand, "").Result!;

    [Fact]
    public void The_plan_in_the_documents_is_what_the_program_draws()
    {
        string drawn = SvgWriter.Write(MouldPictures.Plan(Clock), "plan"), file = Path.Combine(Boatyard.Root(), "docs", "pictures", "plan.svg");
        if (Environment.GetEnvironmentVariable("GRASPWRIGHT_WRITE_DOCS") == "1")
        {
            File.WriteAllText(file, drawn);
        }

        Assert.Equal(File.ReadAllText(file), drawn);
    }

    [Fact]
    public void Pictures_say_in_words_what_they_show()
    {
        Assert.Contains("mix until 1 min 10 s", MouldPictures.Plan(Clock).Description, StringComparison.Ordinal);
        Assert.Contains("on the mould (dashed)", MouldPictures.Cure(Clock).Description, StringComparison.Ordinal);
        Assert.Contains("largest to pass (dotted)", MouldPictures.Off(OffAnswer.Of(Boatyard.Hand, "").Result!).Description, StringComparison.Ordinal);
    }
}

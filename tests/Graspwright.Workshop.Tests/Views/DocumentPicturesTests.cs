using Graspwright.Drawing.Display;
using Graspwright.Drawing.Svg;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Drive;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Views;

namespace Graspwright.Workshop.Tests.Views;

/// <summary>The pictures of the documents are the program's own, of the boatyard hand as its file stands.</summary>
/// <remarks>With GRASPWRIGHT_WRITE_DOCS=1 the tests write the pictures instead of checking them.</remarks>
public sealed class DocumentPicturesTests
{
    private static readonly Graspwright.Hand.HandModel Boatyard = MadeHand.Boatyard();

    private static readonly GripCase Mug = Gripping.Answer(new(Boatyard) { Objects = ["mug"], Locks = [GripQuestion.AllFree], Efforts = [Effort.AllDay] }).Cases[0];

    [Theory]
    [InlineData("closing")]
    [InlineData("grip")]
    [InlineData("loop")]
    [InlineData("frame")]
    public void A_picture_of_the_documents_is_what_the_program_draws(string name)
    {
        string drawn = SvgWriter.Write(Draw(name), name);
        string file = Path.Combine(Path.GetDirectoryName(MadeHand.File)!, "..", "..", "docs", "pictures", name + ".svg");
        if (Environment.GetEnvironmentVariable("GRASPWRIGHT_WRITE_DOCS") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, drawn);
        }

        Assert.Equal(File.ReadAllText(file), drawn);
    }

    private static Picture Draw(string name)
    {
        RunResult run = Mug.Reading.Run;
        PalmLine palm = new(DriveMapping.ToVector(Boatyard.Palm.Point), Boatyard.Palm.DirectionRadians);
        return name switch
        {
            "closing" => SideViewSeries.Draw(Mug.Reading.Drive, Mug.Reading.Held, run, [.. Moments().Select(theta => SideView.Nearest(run, theta))], GripResult.Say(Mug), palm),
            "grip" => Curves.Main(run, GripResult.Say(Mug)),
            "loop" => Curves.Loop(run),
            _ => PartsView.Draw(Mug.Reading.Drive, run, palm),
        };
    }

    private static IEnumerable<double> Moments()
    {
        double touch = Mug.Reading.Closing(EventKind.Touch)!.ThetaRadians;
        return [0, touch / 2, touch, Mug.Reading.End[TraceLayout.Theta]];
    }
}

using Graspwright.Page.Hands;

namespace Graspwright.Page.Tests.Hands;

public sealed class OpenHandTests : IDisposable
{
    private const string Path = "crank.fulcrum.x";
    private readonly DemoHand _demo = new();
    private readonly OpenHand _open;

    public OpenHandTests() => _open = new(_demo.File, TimeProvider.System);

    public void Dispose() => _demo.Dispose();

    [Fact]
    public void An_edit_changes_only_the_bytes_of_its_value()
    {
        string before = _demo.Text;
        Assert.True(_open.Edit([new(Path, "23 mm", "21.3 mm")], "fulcrum").IsDone);
        Assert.Equal(before.Replace("fulcrum = [\"21.3 mm\"", "fulcrum = [\"23 mm\"", StringComparison.Ordinal), _demo.Text);
        Assert.Equal(0.023, _open.State.Hand!.Crank.Fulcrum.X, 12);
    }

    [Fact]
    public void Inches_and_kilograms_force_stay_as_typed()
    {
        Assert.True(_open.Edit([new(Path, "0.84 in"), new("crank.slot.preload", "0.8 kgf")], "typed").IsDone);
        Assert.Contains("\"0.84 in\"", _demo.Text, StringComparison.Ordinal);
        Assert.Contains("preload = \"0.8 kgf\"", _demo.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Several_values_go_in_together_or_not_at_all()
    {
        string before = _demo.Text;
        Outcome outcome = _open.Edit([new(Path, "23 mm"), new("crank.fulcrum.y", "23")], "fulcrum");
        Assert.False(outcome.IsDone);
        Assert.Equal(before, _demo.Text);
        Assert.Equal("23", _open.Refused("crank.fulcrum.y")!.Text);
        Assert.True(_open.Edit([new("crank.fulcrum.y", "19.5 mm")], "again").IsDone);
        Assert.Null(_open.Refused("crank.fulcrum.y"));
    }

    [Fact]
    public void Taking_back_gives_the_same_bytes_and_doing_again_too()
    {
        string before = _demo.Text;
        _open.Edit([new(Path, "23 mm")], "one");
        _open.Edit([new("wrist.travel", "40 deg")], "two");
        string after = _demo.Text;
        Assert.True(_open.Undo().IsDone);
        Assert.True(_open.Undo().IsDone);
        Assert.Equal(before, _demo.Text);
        Assert.Empty(_open.Done);
        Assert.True(_open.Redo().IsDone);
        Assert.True(_open.Redo().IsDone);
        Assert.Equal(after, _demo.Text);
        Assert.Equal(2, _open.Done.Count);
        Assert.Empty(_open.Undone);
    }

    [Fact]
    public void What_another_editor_wrote_is_seen_and_survives_an_edit_and_its_taking_back()
    {
        int told = 0;
        _open.Changed += () => told++;
        _demo.Text = _demo.Text.Replace("travel = \"38 deg\"", "travel = \"36 deg\" # measured again", StringComparison.Ordinal);
        _open.Refresh();
        Assert.Equal(1, told);
        _open.Edit([new(Path, "23 mm", "21.3 mm")], "fulcrum");
        _demo.Text = _demo.Text.Replace("drag = \"6 N·mm\"", "drag = \"7 N·mm\"", StringComparison.Ordinal);
        Assert.True(_open.Undo().IsDone);
        Assert.Contains("36 deg\" # measured again", _demo.Text, StringComparison.Ordinal);
        Assert.Contains("7 N·mm", _demo.Text, StringComparison.Ordinal);
        Assert.Contains("21.3 mm", _demo.Text, StringComparison.Ordinal);
        Assert.Empty(_open.TwoVersions);
    }

    [Fact]
    public void A_value_that_changed_while_it_was_edited_is_not_overwritten_and_both_are_kept()
    {
        _demo.Text = _demo.Text.Replace("fulcrum = [\"21.3 mm\"", "fulcrum = [\"22 mm\"", StringComparison.Ordinal);
        Outcome outcome = _open.Edit([new(Path, "23 mm", "21.3 mm")], "fulcrum");
        Assert.False(outcome.IsDone);
        TwoVersions two = Assert.Single(_open.TwoVersions);
        Assert.Equal(("22 mm", "23 mm"), (two.InFile, two.Other));
        Assert.Contains("[\"22 mm\"", _demo.Text, StringComparison.Ordinal);
        Assert.True(_open.Settle(two.Number, other: true).IsDone);
        Assert.Contains("[\"23 mm\"", _demo.Text, StringComparison.Ordinal);
        Assert.Empty(_open.TwoVersions);
    }

    [Fact]
    public void An_older_text_saved_over_an_edit_of_the_page_keeps_both_versions()
    {
        string older = _demo.Text;
        _open.Edit([new(Path, "23 mm")], "fulcrum");
        string mine = _demo.Text;
        _demo.Text = older.Replace("travel = \"38 deg\"", "travel = \"36 deg\"", StringComparison.Ordinal); // an editor whose text was older
        _open.Refresh();
        TwoVersions two = Assert.Single(_open.TwoVersions);
        Assert.Equal((Path, "21.3 mm", "23 mm"), (two.Path, two.InFile, two.Other));
        Assert.Equal(mine, File.ReadAllText(System.IO.Path.Combine(_demo.Folder, two.Kept!)));
        Assert.Contains("36 deg", _demo.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_with_errors_keeps_the_last_sound_hand()
    {
        _demo.Text = _demo.Text.Replace("travel = \"38 deg\"", "travel = 38", StringComparison.Ordinal);
        _open.Refresh();
        Assert.False(_open.State.Sound);
        Assert.NotNull(_open.State.Hand);
        Assert.NotEmpty(_open.State.Reading.Errors);
    }

    [Fact]
    public void A_value_that_needs_no_change_makes_no_step()
    {
        Assert.True(_open.Edit([new(Path, "21.3 mm")], "nothing").IsDone);
        Assert.Empty(_open.Done);
    }
}

using Graspwright.Page.Body;
using Graspwright.Page.Hands;
using Graspwright.Page.Pages;
using Graspwright.Workshop.Measuring;

namespace Graspwright.Page.Tests.Body;

public sealed class MeasuringSheetTests : IDisposable
{
    private readonly DemoHand _demo = new();
    private readonly OpenHand _open;
    private readonly MeasuringSheet _sheet;

    public MeasuringSheetTests()
    {
        _open = new(_demo.File, TimeProvider.System);
        _sheet = new(_open);
    }

    public void Dispose() => _demo.Dispose();

    [Fact]
    public void What_is_typed_is_kept_right_or_wrong_and_wrong_lines_are_told()
    {
        Assert.True(_sheet.Keep(_open.State.Hand!, Typed(0, "13,1", "kg", "78")).IsDone);
        Assert.Equal("13;1", _sheet.Rows(_open.State.Hand!)[0].Cells[5]);
        Told told = _sheet.Told(_open.State.Hand!)!;
        Assert.Null(told.Answer);
        Assert.Equal(2, Assert.Single(told.Errors).Line);
        Assert.True(_sheet.Keep(_open.State.Hand!, Typed(0, "13.1", "kg", "78")).IsDone);
        Assert.NotNull(_sheet.Told(_open.State.Hand!)!.Answer);
    }

    [Fact]
    public void A_filled_sheet_is_taken_in_and_its_values_go_into_the_hand_file()
    {
        Assert.True(_sheet.TakeIn(File.ReadAllText(Path.Combine(_demo.Folder, "measured.csv"))).IsDone);
        Assert.NotNull(_sheet.Told(_open.State.Hand!)!.Answer);
        Assert.True(_sheet.Apply().IsDone);
        Assert.Contains("# pulled on a luggage scale", _demo.Text, StringComparison.Ordinal);
        Assert.True(_open.State.Sound);
        Assert.Single(_open.Done);
    }

    [Fact]
    public void A_file_that_is_no_sheet_is_refused() => Assert.False(_sheet.TakeIn("a;b\n1;2\n").IsDone);

    private Sent Typed(int row, string value, string unit, string lever)
    {
        IReadOnlyList<SheetRow> rows = _sheet.Rows(_open.State.Hand!);
        List<KeyValuePair<string, string>> sent = [];
        foreach (string column in MeasuringSheet.Typed)
        {
            int cell = Array.IndexOf(SheetCsv.Header.Split(','), column);
            sent.AddRange(rows.Select((r, i) => KeyValuePair.Create(column, i != row ? r.Cells[cell] : column switch { "value" => value, "unit" => unit, "lever" => lever, _ => r.Cells[cell] })));
        }

        return new(sent, null);
    }
}

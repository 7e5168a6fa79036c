using System.CommandLine;
using Graspwright.Book.Pages;
using Graspwright.Drawing.Pdf;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli;

/// <summary>Writes pages as PDF files.</summary>
internal static class SheetFiles
{
    /// <summary>The option that names the paper.</summary>
    public static Option<string> PaperOption() => new("--paper") { Description = "Size of paper: A4 or Letter.", HelpName = "SIZE", DefaultValueFactory = _ => Book.Pages.Paper.A4.Name };

    /// <summary>The paper of a name.</summary>
    /// <param name="name">The name.</param>
    /// <exception cref="BadInputException">There is no such size.</exception>
    public static Paper Paper(string name) => Book.Pages.Paper.Find(name)
        ?? throw new BadInputException(new InputError("command line", 0, 0, "--paper", $"'{name}'", string.Join(", ", Book.Pages.Paper.All.Select(p => p.Name)), "Name the paper that is in the printer."));

    /// <summary>Writes the pages; letters that the shipped font lacks are named on standard error.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="pages">The pages.</param>
    /// <param name="option">Option that named the file, for the message.</param>
    /// <param name="terminal">Where talk goes.</param>
    /// <exception cref="BadInputException">The file cannot be written there.</exception>
    public static void Write(string path, PageFlow pages, string option, Terminal terminal)
    {
        string missing = PdfWriter.Missing(pages.Pages());
        if (missing.Length > 0)
        {
            terminal.Talk.WriteLine($"{path}: the shipped font lacks {string.Join(' ', missing.EnumerateRunes())}; each is printed as an empty box.");
        }

        WholeFile.Write(path, pages.ToPdf(), option);
    }
}

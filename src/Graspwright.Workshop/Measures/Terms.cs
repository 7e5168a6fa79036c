using System.Text;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Gathers the terms and inputs of a working.</summary>
public sealed class Terms
{
    private readonly List<WorkingInput> _inputs = [];
    private readonly List<string> _terms = [];

    /// <summary>Adds an input once and gives its name back.</summary>
    /// <param name="name">Name; made fit for a formula.</param>
    /// <param name="value">Value in its unit.</param>
    /// <param name="unit">Unit.</param>
    public string Input(string name, double value, string unit)
    {
        string fit = Fit(name);
        if (!_inputs.Exists(i => i.Name == fit))
        {
            _inputs.Add(new(fit, value, unit));
        }

        return fit;
    }

    /// <summary>Adds a term.</summary>
    /// <param name="term">Formula text on the inputs' names.</param>
    public void Add(string term) => _terms.Add(term);

    /// <summary>The sum of the terms; 0 without any.</summary>
    public string Sum => _terms.Count == 0 ? "0" : string.Join(" + ", _terms);

    /// <summary>The greatest of the terms; 0 without any.</summary>
    public string Greatest => _terms.Count == 0 ? "0" : $"max({string.Join(", ", _terms)})";

    /// <summary>The working.</summary>
    /// <param name="formula">Formula text on the inputs' names.</param>
    /// <param name="source">Key in the register of sources.</param>
    public Working Working(string formula, string source) => new(formula, _inputs, source);

    private static string Fit(string name)
    {
        StringBuilder fit = new(name.Length);
        foreach (char c in name)
        {
            fit.Append(char.IsLetterOrDigit(c) ? char.ToLowerInvariant(c) : '_');
        }

        return fit.Length > 0 && char.IsLetter(fit[0]) ? fit.ToString() : $"n{fit}";
    }
}

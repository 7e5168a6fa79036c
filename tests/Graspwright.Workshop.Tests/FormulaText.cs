using System.Globalization;

namespace Graspwright.Workshop.Tests;

/// <summary>Evaluates a printed formula on named inputs: + - · / ^, parentheses, functions, π.</summary>
internal sealed class FormulaText
{
    private readonly string _text;
    private readonly IReadOnlyDictionary<string, double> _inputs;
    private int _at;

    private FormulaText(string text, IReadOnlyDictionary<string, double> inputs)
    {
        _text = text.Replace(" ", "", StringComparison.Ordinal);
        _inputs = inputs;
    }

    public static double Evaluate(string text, IReadOnlyDictionary<string, double> inputs)
    {
        FormulaText formula = new(text, inputs);
        double value = formula.Sum();
        return formula._at == formula._text.Length ? value : throw new FormatException($"Left over in '{text}': {formula._text[formula._at..]}");
    }

    private double Sum()
    {
        double value = Product();
        while (Peek is '+' or '-')
        {
            value = Take() == '+' ? value + Product() : value - Product();
        }

        return value;
    }

    private double Product()
    {
        double value = Signed();
        while (Peek is '·' or '/')
        {
            value = Take() == '·' ? value * Signed() : value / Signed();
        }

        return value;
    }

    private double Signed()
    {
        if (Peek != '-')
        {
            return Power();
        }

        Take();
        return -Signed();
    }

    private double Power()
    {
        double root = Atom();
        if (Peek != '^')
        {
            return root;
        }

        Take();
        return Math.Pow(root, Signed());
    }

    private double Atom()
    {
        if (Peek == '(')
        {
            return Arguments()[0];
        }

        if (Peek == 'π')
        {
            Take();
            return Math.PI;
        }

        int start = _at;
        while (char.IsAsciiLetterOrDigit(Peek) || Peek is '_' or '.')
        {
            Take();
        }

        string word = _text[start.._at];
        if (char.IsAsciiDigit(word.FirstOrDefault()))
        {
            return double.Parse(word, CultureInfo.InvariantCulture);
        }

        return Peek == '(' ? Function(word, Arguments()) : _inputs[word];
    }

    private List<double> Arguments()
    {
        List<double> arguments = [];
        do
        {
            Take();
            arguments.Add(Sum());
        }
        while (Peek == ',');
        return Take() == ')' ? arguments : throw new FormatException($"No closing bracket in '{_text}'.");
    }

    private static double Function(string name, List<double> x) => name switch
    {
        "cos" => Math.Cos(x[0]),
        "sin" => Math.Sin(x[0]),
        "abs" => Math.Abs(x[0]),
        "exp" => Math.Exp(x[0]),
        "sqrt" => Math.Sqrt(x[0]),
        "max" => x.Max(),
        "min" => x.Min(),
        "ln" => Math.Log(x[0]),
        _ => throw new FormatException($"No function '{name}'."),
    };

    private char Peek => _at < _text.Length ? _text[_at] : '\0';

    private char Take() => _text[_at++];
}

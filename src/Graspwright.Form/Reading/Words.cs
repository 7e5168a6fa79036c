using System.Buffers.Text;
using System.Text;

namespace Graspwright.Form.Reading;

/// <summary>Words of a text, with the line that they stand in.</summary>
internal ref struct Words(ReadOnlySpan<byte> text)
{
    private readonly ReadOnlySpan<byte> _text = text;
    private int _at;

    /// <summary>Line of the last word, from 1.</summary>
    public int Line { get; private set; } = 1;

    /// <summary>Where reading goes on.</summary>
    public readonly int At => _at;

    public static bool Is(ReadOnlySpan<byte> word, ReadOnlySpan<byte> keyword) => word.Length == keyword.Length && Ascii.EqualsIgnoreCase(word, keyword);

    /// <summary>The next word; empty at the end.</summary>
    public ReadOnlySpan<byte> Next()
    {
        while (_at < _text.Length && _text[_at] <= ' ')
        {
            Line += _text[_at++] == '\n' ? 1 : 0;
        }

        int from = _at;
        while (_at < _text.Length && _text[_at] > ' ')
        {
            _at++;
        }

        return _text[from.._at];
    }

    /// <summary>The next word of this line; empty at its end.</summary>
    public ReadOnlySpan<byte> NextInLine()
    {
        while (_at < _text.Length && _text[_at] <= ' ' && _text[_at] != '\n')
        {
            _at++;
        }

        int from = _at;
        while (_at < _text.Length && _text[_at] > ' ')
        {
            _at++;
        }

        return _text[from.._at];
    }

    /// <summary>Goes past the end of the line.</summary>
    public void SkipLine()
    {
        int end = _text[_at..].IndexOf((byte)'\n');
        _at = end < 0 ? _text.Length : _at + end + 1;
        Line++;
    }

    /// <summary>The next word as a finite number.</summary>
    public double Number(string what)
    {
        ReadOnlySpan<byte> word = Next();
        return Parse(word, what);
    }

    public readonly double Parse(ReadOnlySpan<byte> word, string what)
    {
        bool sign = word.Length > 0 && word[0] == '+';
        if (Utf8Parser.TryParse(sign ? word[1..] : word, out double value, out int used) && used == word.Length - (sign ? 1 : 0) && double.IsFinite(value))
        {
            return value;
        }

        string found = word.Length == 0 ? "the end of the file" : $"'{Encoding.UTF8.GetString(word[..Math.Min(40, word.Length)])}'";
        throw new FormFaultException($"line {Line}", $"{found} for a number of {what}", "a finite number with a decimal point", word.Length == 0 ? "The file was cut off: copy or write it again." : "Repair the line, or write the file again.");
    }
}

using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Heaveline.Files.Yaml;

/// <summary>
/// The YAML parser with every failure as a <see cref="YamlException"/> with a place. On damaged texts the parser of YamlDotNet 18.1 also ends in
/// exceptions without one: InvalidOperationException from its scanner of plain text, ArgumentException from a
/// tag that is no URI (found by random texts).
/// </summary>
internal sealed class PlacedParser : IParser
{
    private readonly Scanner scanner;
    private readonly Parser parser;

    /// <summary>A parser of a text.</summary>
    public PlacedParser(string text)
    {
        scanner = new Scanner(new StringReader(text), skipComments: true);
        parser = new Parser(scanner);
    }

    /// <inheritdoc/>
    public ParsingEvent? Current => parser.Current;

    /// <inheritdoc/>
    public bool MoveNext()
    {
        try
        {
            return parser.MoveNext();
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException)
        {
            var here = scanner.CurrentPosition;
            throw new YamlException(here, here, "the text is damaged here", e);
        }
    }
}

using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Files.Keeping;

/// <summary>
/// A question with the texts of all its files: what another machine needs to do its pieces, and what it is known by, whatever its files are called
/// and wherever they lie.
/// </summary>
public sealed class StudyTexts
{
    // In words that were given, before the number of the file that stood there. Words that hold it themselves are refused.
    private const char OfFile = '\u0001';

    private readonly ImmutableArray<(string Name, string Words)> given;
    private readonly ImmutableArray<StudyText> files;

    private StudyTexts(string word, ImmutableArray<(string Name, string Words)> given, ImmutableArray<StudyText> files)
    {
        (Word, this.given, this.files) = (word, given, files);
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Add(word);
        // How many there are, so that words and files are not taken for one another.
        hash.AppendData(BitConverter.GetBytes((long)given.Length));
        hash.AppendData(BitConverter.GetBytes((long)files.Length));
        foreach (var (name, words) in given)
        {
            Add(name);
            Add(words);
        }

        foreach (var file in files)
        {
            Add(file.Text);
        }

        Hash = Convert.ToHexStringLower(hash.GetHashAndReset());

        // With its length, so that no two lists of texts run into the same bytes.
        void Add(string text)
        {
            var bytes = Encoding.UTF8.GetBytes(text);
            hash.AppendData(BitConverter.GetBytes((long)bytes.Length));
            hash.AppendData(bytes);
        }
    }

    /// <summary>The word of the question.</summary>
    public string Word { get; }

    /// <summary>SHA-256 (FIPS 180-4) of question and texts, 64 hexadecimal digits. Names of files are not in it.</summary>
    public string Hash { get; }

    /// <summary>The texts of a question.</summary>
    /// <param name="word">The word of the question.</param>
    /// <param name="given">What was given for its choices.</param>
    /// <param name="files">The files that were read for it, each thing's under the name that was given for it; those built in are left out.</param>
    /// <exception cref="RefusedValueException">Words hold a character that stands for a file, or name one that was not read.</exception>
    public static StudyTexts Of(string word, Given given, IReadOnlyList<(string Name, IReadOnlyList<InputText> Inputs)> files)
    {
        ArgumentNullException.ThrowIfNull(given);
        ArgumentNullException.ThrowIfNull(files);
        InputText[] inputs =
            [.. files.SelectMany(one => one.Inputs).Where(input => !input.BuiltIn).DistinctBy(input => Path.GetFullPath(input.Name))];
        string[] paths = [.. inputs.Select(input => Path.GetFullPath(input.Name))];
        var above = Above(paths);
        // The longest first: one name may begin another.
        var named = files.Where(one => one.Inputs.Any(input => !input.BuiltIn)).Select(one => one.Name).Distinct()
            .OrderByDescending(name => name.Length).ThenBy(name => name, StringComparer.Ordinal).ToArray();
        return new StudyTexts(
            word,
            [.. given.Words.Select(one => (one.Name, Put(one.Words)))],
            [.. inputs.Zip(paths, (input, path) => new StudyText(Path.GetRelativePath(above, path).Replace('\\', '/'), input.Text))]);

        string Put(string words)
        {
            if (words.Contains(OfFile, StringComparison.Ordinal))
            {
                throw new RefusedValueException(
                    "a word of the study", $"'{words.Replace(OfFile, '?')}', with the control character U+0001 in it", "without it", "Leave it out.");
            }

            foreach (var name in named)
            {
                if (words == name || words.StartsWith(name + " ", StringComparison.Ordinal))
                {
                    var at = Array.IndexOf(paths, Path.GetFullPath(name));
                    return at < 0
                        ? throw new RefusedValueException(
                            "a file of the study", $"'{name}', which was read under another name", "given by the name of the file itself",
                            "A study that is kept, or that others help with, carries its files along: name each by its own path.")
                        : FormattableString.Invariant($"{OfFile}{at}{OfFile}{words[name.Length..]}");
                }
            }

            return words;
        }
    }

    /// <summary>The same as bytes.</summary>
    public byte[] ToBytes() => Encoding.UTF8.GetBytes(new JsonObject
    {
        ["word"] = Word,
        ["given"] = new JsonArray([.. given.Select(one => (JsonNode)new JsonArray(JsonValue.Create(one.Name), JsonValue.Create(one.Words)))]),
        ["files"] = new JsonArray([.. files.Select(file => (JsonNode)new JsonArray(JsonValue.Create(file.Name), JsonValue.Create(file.Text)))]),
    }.ToJsonString());

    /// <summary>The texts of some bytes.</summary>
    /// <exception cref="FormatException">They are none.</exception>
    public static StudyTexts OfBytes(byte[] bytes)
    {
        try
        {
            var root = JsonNode.Parse(bytes)!.AsObject();
            return new StudyTexts(
                root["word"]!.GetValue<string>(),
                [.. root["given"]!.AsArray().Select(Pair)],
                [.. root["files"]!.AsArray().Select(Pair).Select(pair => new StudyText(pair.One, pair.Other))]);
        }
        catch (Exception failure) when (failure is JsonException or InvalidOperationException or NullReferenceException or ArgumentException)
        {
            throw new FormatException("The bytes hold no question with its texts.", failure);
        }

        static (string One, string Other) Pair(JsonNode? node) => (node![0]!.GetValue<string>(), node[1]!.GetValue<string>());
    }

    /// <summary>Writes the files into a folder, and says what to give for the choices so that they are read there.</summary>
    /// <param name="folder">An empty folder of one's own.</param>
    /// <exception cref="FormatException">A file would lie outside it.</exception>
    public Given In(string folder)
    {
        var root = Path.GetFullPath(folder);
        var places = files.Select(file => Path.GetFullPath(Path.Combine(root, file.Name))).ToArray();
        if (places.FirstOrDefault(place => !place.StartsWith(root + Path.DirectorySeparatorChar, StringComparison.Ordinal)) is { } outside)
        {
            throw new FormatException($"The file '{outside}' of the study would lie outside '{root}'.");
        }

        foreach (var (file, place) in files.Zip(places))
        {
            Directory.CreateDirectory(Path.GetDirectoryName(place)!);
            File.WriteAllText(place, file.Text);
        }

        return new Given(given.Select(one => (one.Name, (string?)Placed(one.Words))));

        string Placed(string words)
        {
            if (!words.StartsWith(OfFile))
            {
                return words;
            }

            var end = words.IndexOf(OfFile, 1);
            return end > 0 && int.TryParse(words.AsSpan(1, end - 1), out var at) && at >= 0 && at < places.Length
                ? places[at] + words[(end + 1)..]
                : throw new FormatException("The words of the study name a file that does not come with it.");
        }
    }

    // The deepest folder that all lie in; what lies above it is nobody's business.
    private static string Above(string[] paths)
    {
        var above = paths.Length > 0 ? Path.GetDirectoryName(paths[0])! : Path.GetPathRoot(Path.GetFullPath("."))!;
        while (!paths.All(path => path.StartsWith(Path.TrimEndingDirectorySeparator(above) + Path.DirectorySeparatorChar, StringComparison.Ordinal)
                || Path.GetPathRoot(path) == above)
            && Path.GetDirectoryName(above) is { } higher)
        {
            above = higher;
        }

        return above;
    }

    private sealed record StudyText(string Name, string Text);
}

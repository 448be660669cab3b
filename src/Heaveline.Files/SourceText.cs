using System.Security.Cryptography;
using System.Text;
using Heaveline.Answers;

namespace Heaveline.Files;

/// <summary>A text with its file's name, in lines, for reading and for showing where something stands.</summary>
public sealed class SourceText
{
    private static readonly string[] Breaks = ["\r\n", "\n", "\r"];
    private const int Part = 1 << 14;
    private readonly bool marked;

    // Made when a place is first shown: the lines of a long measured road fill as much memory again as its text.
    private string[] Lines => field ??= Text.Split(Breaks, StringSplitOptions.None);

    /// <summary>A text under a name. A byte order mark at its start is taken off.</summary>
    public SourceText(string file, string text)
    {
        File = file;
        marked = text.StartsWith('\uFEFF');
        Text = marked ? text[1..] : text;
    }

    /// <summary>The file as the user named it.</summary>
    public string File { get; }

    /// <summary>The whole text.</summary>
    public string Text { get; }

    /// <summary>
    /// SHA-256 (FIPS 180-4) of the text in UTF-8, with the byte order mark that it came with: of the bytes of its
    /// file. 64 hexadecimal digits, small letters.
    /// </summary>
    public string Sha256
    {
        get
        {
            // Part by part: the bytes of a long measured road need not lie beside its text.
            using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
            hash.AppendData(marked ? Encoding.UTF8.Preamble : []);
            var encoder = Encoding.UTF8.GetEncoder();
            var bytes = new byte[Encoding.UTF8.GetMaxByteCount(Part)];
            for (var start = 0; start < Text.Length; start += Part)
            {
                var part = Text.AsSpan(start, Math.Min(Part, Text.Length - start));
                hash.AppendData(bytes, 0, encoder.GetBytes(part, bytes, flush: start + Part >= Text.Length));
            }

            return Convert.ToHexStringLower(hash.GetHashAndReset());
        }
    }

    /// <summary>The same text, its byte order mark included, under another name.</summary>
    public SourceText Named(string file) => new(file, marked ? '\uFEFF' + Text : Text);

    /// <summary>The text as what an answer was computed from.</summary>
    /// <param name="builtIn">Whether it comes with the program.</param>
    public InputText ToInput(bool builtIn = false) => new() { Name = File, Text = Text, Sha256 = Sha256, BuiltIn = builtIn };

    /// <summary>How many lines the text has; an empty one after the last line break is not counted.</summary>
    public int LineCount => Lines.Length > 1 && Lines[^1].Length == 0 ? Lines.Length - 1 : Lines.Length;

    /// <summary>A line, counted from 1; empty outside the text.</summary>
    public string Line(int number) => number >= 1 && number <= Lines.Length ? Lines[number - 1] : "";

    /// <summary>
    /// The place of the first character that no text file should hold (control characters, other line breaks, half a surrogate pair), with its code;
    /// null when there is none.
    /// </summary>
    public (Place Place, int Code)? FirstStrange()
    {
        for (var i = 0; i < Lines.Length; i++)
        {
            var line = Lines[i];
            for (var j = 0; j < line.Length; j++)
            {
                if (char.IsHighSurrogate(line[j]) && j + 1 < line.Length && char.IsLowSurrogate(line[j + 1]))
                {
                    j++;
                }
                else if ((char.IsControl(line[j]) && line[j] != '\t') || char.IsSurrogate(line[j])
                    || line[j] is '\u2028' or '\u2029' or '\uFEFF' or '\uFFFE' or '\uFFFF')
                {
                    return (new Place(i + 1, j + 1, 1), line[j]);
                }
            }
        }

        return null;
    }

    /// <summary>Reads a file of UTF-8 text up to a size in bytes, or says why not.</summary>
    public static (SourceText Source, Refusal? Refusal) Load(string path, int mostBytes)
    {
        var empty = new SourceText(path, "");
        (SourceText, Refusal?) Refuse(string message, string advice) => (empty, new Refusal(path, 1, 1, 1, message, advice));
        if (string.IsNullOrWhiteSpace(path))
        {
            return Refuse("no file is named.", "Give the file's name.");
        }

        if (Directory.Exists(path))
        {
            return Refuse("this is a folder, not a file.", "Name a file in it.");
        }

        if (FileNode.Other(path) is { } other)
        {
            return Refuse(
                $"this is {other}; it is not opened.",
                "Name a file; what a program prints goes into one first.");
        }

        try
        {
            if (new FileInfo(path) is { Exists: true } file && file.Length > mostBytes)
            {
                return Refuse(
                    $"the file has {file.Length} bytes; it must be {mostBytes} or less.",
                    "Give the text file that describes one thing; measured data go into files of their own.");
            }

            var strict = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);
            return (new SourceText(path, strict.GetString(Bounded.Read(path, mostBytes))), null);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return Refuse("there is no such file.", "Check the name and the folder.");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Refuse($"the file cannot be read: {FileTrouble.Words(e)}", "Check that it is a file and that you may read it.");
        }
        catch (DecoderFallbackException)
        {
            return Refuse("the file is not UTF-8 text.", "Save it as plain text in UTF-8.");
        }
    }
}

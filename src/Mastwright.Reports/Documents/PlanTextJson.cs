using System.Text.Json;
using Mastwright.Storage.Plans;

namespace Mastwright.Reports.Documents;

/// <summary>The plan's text as JSON documents: shape "plan-text" for the text itself, "plan-problems" for what is wrong with one; version 1.</summary>
internal static class PlanTextJson
{
    /// <summary>Writes the text.</summary>
    /// <param name="file">Name of the plan's file.</param>
    /// <param name="hash">SHA-256 of its bytes: a change of the text names it.</param>
    /// <param name="text">The text.</param>
    /// <param name="undo">When the last saved change was made, and what it was; null when there is none to undo.</param>
    /// <param name="notes">What to look at after the change that this answers.</param>
    /// <param name="drafts">Texts that pages have not saved yet, newest first.</param>
    internal static string Write(
        string file, string hash, string text, (DateTimeOffset Time, string What)? undo, IEnumerable<string> notes, IEnumerable<(string Id, DateTimeOffset Time, string BasedOn, string Text)> drafts) =>
        JsonDocumentWriter.Write("plan-text", 1, writer =>
        {
            writer.WriteString("file", file);
            writer.WriteString("hash", hash);
            writer.WriteString("text", text);
            if (undo is var (time, what))
            {
                writer.WriteStartObject("undo");
                writer.WriteString("time", time);
                writer.WriteString("what", what);
                writer.WriteEndObject();
            }
            else
            {
                writer.WriteNull("undo");
            }

            writer.Strings("notes", notes);
            writer.WriteStartArray("drafts");
            foreach ((string id, DateTimeOffset written, string basedOn, string draft) in drafts)
            {
                writer.WriteStartObject();
                writer.WriteString("id", id);
                writer.WriteString("time", written);
                writer.WriteString("based-on", basedOn);
                writer.WriteString("text", draft);
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
        });

    /// <summary>Writes what is wrong with a text, and what is worth a look.</summary>
    internal static string WriteProblems(string file, IEnumerable<PlanProblem> problems, IEnumerable<PlanProblem> notes) =>
        JsonDocumentWriter.Write("plan-problems", 1, writer =>
        {
            writer.WriteString("file", file);
            List(writer, "problems", problems);
            List(writer, "notes", notes);
        });

    private static void List(Utf8JsonWriter writer, string name, IEnumerable<PlanProblem> problems)
    {
        writer.WriteStartArray(name);
        foreach (PlanProblem problem in problems)
        {
            writer.WriteStartObject();
            writer.WriteString("code", problem.Code);
            writer.WriteString("file", problem.File);
            writer.WriteNumber("line", problem.Line);
            writer.WriteNumber("column", problem.Column);
            writer.WriteString("path", problem.Path);
            writer.WriteString("message", problem.Message);
            writer.WriteString("found", problem.Found);
            writer.WriteString("wanted", problem.Wanted);
            writer.WriteString("text", problem.ToString());
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }
}

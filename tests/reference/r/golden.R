# Writes one reference case as a folder beside r/: SOURCE.md (where it comes from), data.csv (the rows), expected.json
# (parameters, expected values, published digits, tolerance). A value x passes when |x - expected| <= abs + rel * |expected|.
# JSON knows no infinities: they are the strings "Inf" and "-Inf".
suppressMessages(library(survival))

json_number <- function(x) {
  if (is.na(x)) return("null")
  if (is.infinite(x)) return(if (x > 0) "\"Inf\"" else "\"-Inf\"")
  # Twelve digits: beyond every tolerance used, and the same on every machine.
  sprintf("%.12g", x)
}
json <- function(x, indent = 0) {
  pad <- strrep(" ", indent + 2)
  if (is.null(x)) return("null")
  if (is.matrix(x)) return(paste0("[", paste(apply(x, 1, json), collapse = ", "), "]"))
  if (is.list(x)) {
    body <- mapply(function(n, v) paste0(pad, "\"", n, "\": ", json(v, indent + 2)), names(x), x)
    return(paste0("{\n", paste(body, collapse = ",\n"), "\n", strrep(" ", indent), "}"))
  }
  items <- if (is.character(x)) paste0("\"", x, "\"") else if (is.logical(x)) ifelse(x, "true", "false") else
    vapply(as.numeric(x), json_number, "")
  if (length(items) == 1 && !inherits(x, "AsIs")) items else paste0("[", paste(items, collapse = ", "), "]")
}

golden <- function(id, method, source, expected, table = NULL, parameters = list(), published = list(),
                   rel = 1e-7, abs = 1e-10, note = NULL, checks = list()) {
  bad <- names(checks)[!vapply(checks, isTRUE, NA)]
  if (length(bad)) stop(id, ": check failed: ", paste(bad, collapse = ", "))
  folder <- file.path("..", id)
  dir.create(folder, showWarnings = FALSE)
  md <- c(paste("#", id), "", paste("Method:", method), "", paste("Source:", source), "",
          paste0("Made by `r/", script_name, "` with R and its survival package; checked there against ",
                 if (length(checks)) paste(names(checks), collapse = ", ") else "nothing further", "."),
          if (!is.null(note)) c("", paste("Note:", note)))
  writeLines(md, file.path(folder, "SOURCE.md"))
  if (!is.null(table)) write.csv(table, file.path(folder, "data.csv"), row.names = FALSE, quote = FALSE, na = "")
  body <- list(parameters = parameters, expected = expected, published = published, tolerance = list(rel = rel, abs = abs))
  writeLines(json(body[lengths(body) > 0]), file.path(folder, "expected.json"))
  cat(id, "\n")
}

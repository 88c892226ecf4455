@echo off
rem Starts Mottle from wherever it was unpacked. JAVA_HOME and JAVA_OPTS are honoured.
setlocal
set "JAVA=java"
if defined JAVA_HOME set "JAVA=%JAVA_HOME%\bin\java"
"%JAVA%" -XX:+UseSerialGC %JAVA_OPTS% -jar "%~dp0..\mottle.jar" %*
exit /b %ERRORLEVEL%
